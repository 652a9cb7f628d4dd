package diagnosis_test

import (
	"testing"

	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// With its thermostat fully open a sound car's bypass is shut by the second plate and cools (T9; common practice): the
// trade's rule has no end on that side (DT13), so the model, whose plates leak, has none to set.
func TestABypassThatCoolsOnAHotEngineIsWell(t *testing.T) {
	b := newBench(t)
	c := idle("inlet-thermostat", 94, map[diagram.Point]float64{"engine_out": 92, "rad_in": 91, "rad_out": 89, "bypass": 50})
	c.Loop.ThermostatOpensC, c.Site.AmbientC = casetest.P(diagram.Celsius(80)), casetest.P(diagram.Celsius(35))
	b.rank(t, c, diagnosis.Prior{})
	span := diagnosis.Expecter{Table: b.table, Crowds: b.crowds}.Expect(&c, 0).Deltas[evidence.BypassBelowEngineOut]
	if span.LowK == nil || span.HighK != nil {
		t.Errorf("engine outlet minus bypass, fully hot: %v to %v", span.LowK, span.HighK)
	}
}
