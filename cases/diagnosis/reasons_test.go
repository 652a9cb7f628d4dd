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

// Many readings that agree speak for a sound loop together, where each by itself says too little to be told.
func TestReadingsThatAgreeSpeakTogether(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 90, map[diagram.Point]float64{
		"housing": 88, "engine_out": 84, "rad_in": 83, "rad_out": 58, "pump_in": 57, "heater_in": 84, "heater_out": 75, "bypass": 84, "vent": 60,
	})
	r := b.rank(t, c, diagnosis.Prior{})
	r.Explain(len(r.Causes))
	told := 0
	for _, cause := range r.Causes {
		for _, reason := range append(cause.For, cause.Against...) {
			if reason.Words.Key() == "reason.together" {
				told++
			}
		}
	}
	if first := r.Causes[0]; first.Cause != "none" || len(first.For) == 0 || told == 0 {
		t.Errorf("%s is first by %v; %d causes are told of by all together", first.Cause, first.For, told)
	}
}
