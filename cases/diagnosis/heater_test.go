package diagnosis_test

import (
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
)

// Who has read both of the heater's hoses, hot and with heat asked for, isn't sent to feel them. The flow is asked for as
// before where one hose is missing, or the heater was shut.
func TestTheHeatersHosesAreFeltOnce(t *testing.T) {
	b := newBench(t)
	read := map[diagram.Point]float64{"engine_out": 84, "rad_in": 77, "heater_in": 70, "heater_out": 41}
	advises := func(c cases.Case) bool {
		return slices.ContainsFunc(b.judge.Next(b.rank(t, c, diagnosis.Prior{})), func(n diagnosis.Check) bool { return n.Check.Check == "heater-flow" })
	}
	both, one, shut := idle("outlet-thermostat", 89, read), idle("outlet-thermostat", 89, map[diagram.Point]float64{"engine_out": 84, "heater_in": 70}), idle("outlet-thermostat", 89, read)
	shut.Rounds[0].Heater = cases.HeaterOff
	for name, tt := range map[string]struct {
		c    cases.Case
		want bool
	}{"both read": {both, false}, "one": {one, true}, "both, heater off": {shut, true}} {
		tt.c.Complaint.Symptoms = []cases.Symptom{"cabin-heat-poor", "cabin-heat-comes-and-goes"}
		if got := advises(tt.c); got != tt.want {
			t.Errorf("%s: heater flow advised: %v", name, got)
		}
	}
}
