package mind_test

import (
	"context"
	"reflect"
	"testing"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/diagram"
)

// What is expected at the hoses comes with the healthy cars, once and for good: the
// whole crowd holds the same ones.
func TestRangesStayOnceTheyAreThere(t *testing.T) {
	m, err := mind.New()
	if err != nil {
		t.Fatal(err)
	}
	m.Crowds.Draws = 4
	minutes, housing := 25.0, diagram.Celsius(90)
	c := cases.Case{ID: "A", Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{
		Label: "warm idle", MinutesSinceStart: &minutes, Readings: []cases.Reading{{Point: diagram.Housing, ShownC: &housing}},
	}}}
	g := m.Asked(&c)
	if err := m.GatherRanges(context.Background(), &c, g); err != nil {
		t.Fatal(err)
	}
	early := m.Analyst.Analyse(&c).Rounds[0].Expected
	if err := m.Gather(context.Background(), &c, g, nil); err != nil {
		t.Fatal(err)
	}
	if whole := m.Analyst.Analyse(&c).Rounds[0].Expected; len(early) == 0 || !reflect.DeepEqual(early, whole) {
		t.Errorf("with healthy cars %v, with all %v", early, whole)
	}
}
