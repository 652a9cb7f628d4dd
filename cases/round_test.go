package cases_test

import (
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

// A round that was only begun tells nothing; the sensor, a hose or the gauge each tell of warmth by themselves, and a
// point that is named without a temperature and a surface can't be reached.
func TestWhatARoundTells(t *testing.T) {
	c := casetest.P(diagram.Celsius(60))
	for _, tt := range []struct {
		name            string
		r               cases.Round
		measured, warms bool
	}{
		{"begun", cases.Round{Label: "warm idle", AmbientC: c}, false, false},
		{"sensor", cases.Round{EctC: c}, true, true},
		{"hose", cases.Round{Readings: []cases.Reading{{Point: diagram.RadIn, ShownC: c}}}, true, true},
		{"out of reach", cases.Round{Readings: []cases.Reading{{Point: diagram.RadIn}}}, false, false},
		{"gauge", cases.Round{Gauge: cases.GaugeRed}, false, true},
	} {
		if tt.r.Measured() != tt.measured || tt.r.TellsWarmth() != tt.warms {
			t.Errorf("%s: measured %t, tells of warmth %t", tt.name, tt.r.Measured(), tt.r.TellsWarmth())
		}
	}
	for want, r := range map[bool]cases.Reading{true: {Point: diagram.RadIn}, false: {Point: diagram.RadIn, Surface: cases.Surface{Word: "rubber"}}} {
		if r.CantReach() != want {
			t.Errorf("%+v: can't be reached %t, want %t", r, !want, want)
		}
	}
	if (cases.Reading{Point: diagram.RadIn, ShownC: c}).CantReach() {
		t.Error("what was read can't be reached")
	}
}

// A loop has the points of its layout along the flow; one that isn't known may have any.
func TestPointsOfALoop(t *testing.T) {
	if got := (cases.Loop{}).Points(); !slices.Equal(got, diagram.Points()) {
		t.Errorf("without a layout %v", got)
	}
	layout, err := diagram.LoopByID("heated-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range (cases.Loop{Layout: layout.ID}).Points() {
		if p != layout.Points[i].Point {
			t.Errorf("point %d of %s is %s, want %s", i, layout.ID, p, layout.Points[i].Point)
		}
	}
	if (cases.Loop{Layout: "outlet-thermostat"}).Heated() || !(cases.Loop{Layout: "heated-thermostat"}).Heated() || (cases.Loop{}).Heated() {
		t.Error("which thermostat is heated isn't told by the layout")
	}
}
