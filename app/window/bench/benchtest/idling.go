package benchtest

import (
	"time"

	"loopbook/cases"
	"loopbook/diagram"
)

// Idling is a case with one round at warm idle.
func Idling(housing diagram.Celsius) cases.Case {
	minutes := 25.0
	return cases.Case{Opened: time.Now(), Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{
		Label: "warm idle", MinutesSinceStart: &minutes, Readings: []cases.Reading{{Point: diagram.Housing, ShownC: &housing}},
	}}}
}
