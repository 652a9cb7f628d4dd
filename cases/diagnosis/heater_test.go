package diagnosis_test

import (
	"math"
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
)

// Who has read both of the heater's hoses, hot and with heat asked for, isn't sent to feel them, and their flow doesn't
// count as a second witness in full. It is asked for as before where one hose is missing, or the heater was shut.
func TestTheHeatersHosesAreHeardOnce(t *testing.T) {
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

	shift := func(c cases.Case) float64 { // of the odds of a blocked core against air, by a flow that is felt weak
		odds := func() float64 {
			r := b.rank(t, c, diagnosis.Prior{})
			core, _ := r.Of("heater-core-restricted")
			air, _ := r.Of("coolant-low-air")
			return math.Log(core.Probability / air.Probability)
		}
		before := odds()
		c.Tests = []cases.Test{{Kind: cases.HeaterTest, Stage: cases.BeforeRepair, Flows: "weak"}}
		return odds() - before
	}
	if again, new := shift(both), shift(one); !(again > 0 && again < 0.5*new) {
		t.Errorf("a weak flow speaks for the core by %.2f after the hoses were read, and by %.2f before", again, new)
	}
}
