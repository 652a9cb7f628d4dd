// Package ensemble simulates many cars of one layout under the same conditions:
// each cause of trouble, each with builds and severities drawn from stated
// ranges. What the crowd shows at a point is what such a loop would show here
// and now; held against what was measured it says which cause explains it.
//
// Draws are fixed by their number alone, so the same setting gives the same
// ensemble, and a draw has the same car and the same way of driving for every
// cause: differences between causes don't drown in differences between cars.
package ensemble

import (
	"fmt"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
)

// Setting is all that the crowd has in common.
type Setting struct {
	Loop      *diagram.Loop
	Causes    []string
	OpensC    *diagram.Celsius // of the thermostat; nil: not known
	FullC     *diagram.Celsius
	CapKPa    *diagram.KPa
	AltitudeM diagram.Metre
	Coolant   coolant.Mixture
	Fan       physics.FanKind
	Starts    []Start
	Ahead     []Stop // each of which might come next, after the last stop
}

// Start is a cold start and the stops on the way from it.
type Start struct {
	AmbientC diagram.Celsius
	Stops    []Stop
}

// Stop is a moment at which the loop is looked at, and how the car was run
// just before.
type Stop struct {
	Seconds  float64 // since the stop before, or since the cold start; 0: not known
	RPM      float64 // 0: not known
	SpeedKmh float64
	Blower   float64 // of the cabin, 0 to 1; below 0: not known
	FromCold bool    // of the stops ahead: begun by a cold start of its own
	Held     bool    // the seconds are exact, and the car is run so all of them
	Unsaid   bool    // of a held one: whether it stands or is driven, and how, isn't known
}

// Stops is the number of stops of all starts together, without those ahead.
func (s Setting) Stops() int {
	n := 0
	for _, start := range s.Starts {
		n += len(start.Stops)
	}
	return n
}

// Key is equal for settings that give the same ensemble, and for no others: a blank parts the numbers.
func (s Setting) Key() string {
	return fmt.Sprintln(s.Loop.ID, s.Causes, known(s.OpensC), known(s.FullC), known(s.CapKPa),
		s.AltitudeM, s.Coolant, s.Fan, s.Starts, s.Ahead)
}

func known[T ~float64](v *T) string {
	if v == nil {
		return "-"
	}
	return fmt.Sprint(float64(*v))
}
