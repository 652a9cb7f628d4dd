package words

import (
	"slices"
	"strings"
	"testing"

	"loopbook/app/ui/compare"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

func TestDifferencesAreTold(t *testing.T) {
	a, b := casetest.Invented(1), casetest.Invented(1)
	if differ, same, err := Differences(a, b, units.Metric()); err != nil || len(differ) != 0 || len(same) < 20 {
		t.Errorf("of the same case %d differ and %d don't, %v", len(differ), len(same), err)
	}
	b.ID = "another"
	b.Vehicle.Make = "Ostrad"
	b.Rounds[0].Readings[0].ShownC = casetest.P(*a.Rounds[0].Readings[0].ShownC + 5)
	b.Lesson = ""
	b.Logs = []cases.Log{{Name: "warm-up", TimeS: make([]float64, 100)}}
	differ, _, err := Differences(a, b, units.Metric())
	if err != nil || len(differ) != 5 {
		t.Fatalf("%d differ, %v: %+v; want the make, a reading, the lesson and the log's name and series", len(differ), err, differ)
	}
	find := func(where string) compare.Row {
		for _, r := range differ {
			if r.Where == where {
				return r
			}
		}
		t.Errorf("%q isn't told: %+v", where, differ)
		return compare.Row{}
	}
	if r := find("Vehicle · make"); r.Left != a.Vehicle.Make || r.Right != "Ostrad" {
		t.Errorf("make %+v", r)
	}
	if r := find("Lesson"); r.Left == "" || r.Right != "" {
		t.Errorf("lesson %+v", r)
	}
	if r := find("Warm-up log 1, warm-up · times"); r.Right != "100 values" {
		t.Errorf("log %+v", r)
	}
}

// What the cars showed stands before the paperwork: the temperatures came after the title, the dates and the customer.
func TestWhatTheCarsShowedComesFirst(t *testing.T) {
	a, b := casetest.Invented(1), casetest.Invented(1)
	b.Title, b.Vehicle.Make, b.Customer.Name = "another", "Ostrad", "Ada Peckwell"
	b.Rounds[0].Readings[0].ShownC = casetest.P(*a.Rounds[0].Readings[0].ShownC + 5)
	b.Complaint.Text = "another"
	differ, _, err := Differences(a, b, units.Metric())
	if err != nil || len(differ) != 5 {
		t.Fatalf("%d differ, %v", len(differ), err)
	}
	if at := slices.IndexFunc(differ, func(r compare.Row) bool { return strings.HasPrefix(r.Where, "Round 1") }); at != 1 || !strings.HasPrefix(differ[0].Where, "Complaint") {
		t.Errorf("the temperature is row %d of %+v", at, differ)
	}
}

// A round that was renamed is the same round: its name stood twice, each time against nothing, and so did all else of it.
func TestARenamedRoundIsToldOnce(t *testing.T) {
	a, b := casetest.Invented(1), casetest.Invented(1)
	a.Rounds[0].Label, b.Rounds[0].Label = "warm idle", "idle, fan on"
	a.Rounds[0].EngineRPM, b.Rounds[0].EngineRPM = casetest.P(800.0), casetest.P(2500.0)
	differ, _, err := Differences(a, b, units.Metric())
	if err != nil || len(differ) != 2 {
		t.Fatalf("%d differ, %v: %+v; want the name and the engine speed", len(differ), err, differ)
	}
	for _, want := range []compare.Row{{Where: "Round 1 · name", Left: "warm idle", Right: "idle, fan on"}, {Where: "Round 1 · engine's rpm", Left: "800", Right: "2500"}} {
		if !slices.Contains(differ, want) {
			t.Errorf("%+v lacks %+v", differ, want)
		}
	}
	b.Rounds[0].Label = a.Rounds[0].Label
	if differ, _, err = Differences(a, b, units.Metric()); err != nil || len(differ) != 1 || differ[0].Where != "Round 1, warm idle · engine's rpm" {
		t.Errorf("%+v, %v; want the round by its name", differ, err)
	}
}

// What a point, a check or a code is named by isn't told beside it: a bleed line that one car lacks stood there twice, once with
// its name and once with its temperature. One of which nothing else is known is told by its name.
func TestANameIsToldOnce(t *testing.T) {
	a, b := casetest.Invented(1), casetest.Invented(1)
	a.Rounds[0].Readings, b.Rounds[0].Readings = []cases.Reading{{Point: diagram.BottleBleed, ShownC: casetest.P(diagram.Celsius(80.3))}}, nil
	a.Codes, b.Codes = []cases.Code{{Code: "P0480"}}, nil
	a.Tests, b.Tests = []cases.Test{{Kind: cases.PressureTest, StartKPa: casetest.P(diagram.KPa(88))}}, nil
	differ, _, err := Differences(a, b, units.Metric())
	if err != nil || len(differ) != 3 {
		t.Fatalf("%d differ, %v: %+v; want the bleed line, the code and the pressure", len(differ), err, differ)
	}
	for i, want := range []string{"P0480", "80.3 °C", "88 kPa"} {
		if differ[i].Left != want || differ[i].Right != "" {
			t.Errorf("row %d is %+v, want %q", i, differ[i], want)
		}
	}
}
