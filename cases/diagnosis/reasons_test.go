package diagnosis_test

import (
	"strings"
	"testing"

	"loopbook/cases/diagnosis"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// What a healthy loop would show of a difference is one range, on the hose map and in a reason:
// on an engine hotter than any healthy one it is the trade's.
func TestAReasonTellsTheRangeOfTheHoseMap(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 116, map[diagram.Point]float64{"heater_in": 112, "heater_out": 60})
	r := b.rank(t, c, diagnosis.Prior{})
	r.Explain(len(r.Causes))
	want := diagnosis.Expecter{Table: b.table, Crowds: b.crowds}.Expect(&c, 0).Deltas["heater"]
	by := say.English()
	healthy := by.Fill("healthy {0#} to {1}", *want.LowK, *want.HighK)
	told := 0
	for _, cause := range r.Causes {
		for _, reason := range append(cause.For, cause.Against...) {
			if len(reason.Points) != 2 {
				continue
			}
			told++
			if got := by.Say(reason.Words); !strings.Contains(got, healthy) {
				t.Errorf("%s: %s, want %s", cause.Cause, got, healthy)
			}
		}
	}
	if told == 0 {
		t.Error("no cause has a reason by the heater's difference")
	}
}
