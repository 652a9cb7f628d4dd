package diagnosis_test

import (
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
)

// asked are the checks that are named next.
func (b bench) asked(t testing.TB, c cases.Case) []string {
	t.Helper()
	var out []string
	for _, n := range b.judge.Next(b.rank(t, c, diagnosis.Prior{})) {
		out = append(out, n.Check.Check)
	}
	return out
}

// A heated thermostat holds about 105 °C where nothing is noted of it (TH6 of testdata/trade/numbers.csv, published), so at 106 °C
// nobody lets the engine cool or waits for its fan: it may be driven and held at speed. With one of 88 °C it may not.
func TestAHeatedThermostatIsNotTooHot(t *testing.T) {
	b := newBench(t)
	for layout, asked := range map[string]bool{"heated-thermostat": true, "inlet-thermostat": false} {
		c := idle(layout, 106, map[diagram.Point]float64{"rad_in": 99})
		c.Loop.ThermostatOpensC = nil
		c.Rounds[0].MinutesSinceStart = casetest.P(30.0)
		next := b.asked(t, c)
		for _, walk := range []string{likelihood.RaisedIdle, likelihood.AfterRoad} {
			if slices.Contains(next, walk) != asked {
				t.Errorf("at 106 °C with the loop %s: %q", layout, next)
			}
		}
	}
}
