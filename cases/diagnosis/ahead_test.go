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

// A log of a drive with a warm engine tells nothing of how it warms, as the finding beside it says: the warm-up is still to be
// watched. One from cold has told it.
func TestAWarmUpIsAskedForBesideALogOfAWarmEngine(t *testing.T) {
	b := newBench(t)
	for from, asked := range map[float64]bool{88: true, 20: false} {
		c := idle("outlet-thermostat", 88, map[diagram.Point]float64{"rad_in": 82, "rad_out": 70})
		var l cases.Log
		for s := 0.0; s <= 900; s += 10 {
			l.TimeS, l.EctC, l.EngineRPM = append(l.TimeS, s), append(l.EctC, min(from+s/10, 88)), append(l.EngineRPM, 1800)
		}
		c.Logs = []cases.Log{l}
		if next := b.asked(t, c); slices.Contains(next, likelihood.WarmUp) != asked {
			t.Errorf("beside a log from %g °C on: %q", from, next)
		}
	}
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
