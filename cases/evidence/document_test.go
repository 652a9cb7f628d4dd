package evidence_test

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"sort"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// The keys of "What the analysis answers" in the open case format.
func TestDocumentHasTheFormatsKeys(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(110, 35))
	text, err := json.Marshal(evidence.Document(c, analyst(t).Analyse(c)))
	if err != nil {
		t.Fatal(err)
	}
	var whole map[string]json.RawMessage
	if err := json.Unmarshal(text, &whole); err != nil {
		t.Fatal(err)
	}
	wantKeys(t, "document", whole, "boiling causes deltas flags id next warm_up")
	var parts struct {
		Deltas, Flags []map[string]json.RawMessage
		Boiling       map[string]json.RawMessage
	}
	if err := json.Unmarshal(text, &parts); err != nil {
		t.Fatal(err)
	}
	wantKeys(t, "deltas[0]", parts.Deltas[0], "expected_high_k expected_low_k from name round state to value_k")
	wantKeys(t, "flags[0]", parts.Flags[0], "because id round severity text")
	wantKeys(t, "boiling", parts.Boiling, "hottest_c margin_k point_c")
	if !strings.Contains(string(text), `"from":"ect","to":"housing"`) {
		t.Errorf("no sensor delta from ect to housing in %s", text)
	}
}

func wantKeys(t *testing.T, what string, object map[string]json.RawMessage, want string) {
	t.Helper()
	var keys []string
	for k := range object {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	if got := strings.Join(keys, " "); got != want {
		t.Errorf("%s: keys %q, want %q", what, got, want)
	}
}

func TestEmptyDocumentHasListsAndNoBoiling(t *testing.T) {
	c := &cases.Case{ID: "new"}
	text, err := json.Marshal(evidence.Document(c, analyst(t).Analyse(c)))
	want := `{"id":"new","deltas":[],"flags":[{"id":"nothing-measured","round":-1,"severity":"note",` +
		`"text":"Nothing to go on yet: no usable reading, no test and no log.","because":[]}],` +
		`"causes":[],"next":[],"boiling":null,"warm_up":[]}`
	if err != nil || string(text) != want {
		t.Errorf("%v\n got %s\nwant %s", err, text, want)
	}
}

func TestFormatsExample(t *testing.T) {
	text, err := os.ReadFile("../../testdata/cases/format-example.json")
	if err != nil {
		t.Fatal(err)
	}
	c, err := cases.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	// Upper hose 2.5 K under an engine of 66 °C: DT9, common practice.
	if f := find(analyst(t).Analyse(&c), "thermostat-passing-early"); f == nil || f.Points[0] != diagram.RadIn {
		t.Errorf("thermostat-passing-early: %+v", f)
	}
}

// Boiling under a cap: water at 50 kPa over 101.325 kPa boils at 111.6 °C
// (IAPWS R7-97, saturation at 151.3 kPa).
func TestBoiling(t *testing.T) {
	a := analyst(t)
	c := toCase(healthy("outlet-thermostat", warm2500).open(100, 15))
	c.Loop.Coolant = cases.Coolant{Base: cases.Water}
	c.Loop.CapKPa = casetest.P(diagram.KPa(50))
	f := a.Analyse(c)
	if b := f.Hottest(); b == nil || math.Abs(float64(b.PointC)-111.6) > 0.1 || b.HottestC != 100 || math.Abs(float64(b.MarginK)-11.6) > 0.1 {
		t.Fatalf("water, 50 kPa, engine at 100 °C: %+v", f.Boiling)
	}
	flag := find(f, "boiling-margin-small")
	if flag == nil || flag.Severity != evidence.Look || !strings.Contains(becauseOf(flag), "0 m assumed") {
		t.Errorf("11.6 K of margin, altitude unknown: %+v", flag)
	}
	c.Loop.CapKPa = casetest.P(diagram.KPa(110))
	c.Tests = []cases.Test{{Kind: "cap", OpensKPa: casetest.P(diagram.KPa(50))}}
	if b := a.Analyse(c).Hottest(); b == nil || math.Abs(float64(b.PointC)-111.6) > 0.1 {
		t.Errorf("a cap of 110 kPa that opens at 50: %+v", b)
	}
	repaired := *c
	repaired.Rounds = append(slices.Clone(c.Rounds), c.Rounds[0])
	repaired.Rounds[1].Stage = cases.AfterRepair
	for stage, want := range map[cases.Stage]float64{"": 111.6, cases.BeforeRepair: 111.6, cases.AfterRepair: 122.0} { // at 110.3 kPa, the same table
		if b := a.Analyse(&repaired).BoilingOf(stage); b == nil || math.Abs(float64(b.PointC)-want) > 0.1 {
			t.Errorf("a weak cap, changed since; in a round of stage %q: %+v, want %g °C", stage, b, want)
		}
	}
	c.Tests = []cases.Test{{Kind: "cap", Holds: casetest.P(false)}}
	if b := a.Analyse(c).Hottest(); b != nil {
		t.Errorf("a cap that was found to let go, yet %+v", b)
	}
	half := *c
	half.Loop.CapKPa, half.Loop.Coolant = casetest.P(diagram.KPa(50)), cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}
	half.Tests = []cases.Test{{Kind: "coolant", FreezeC: degC(0)}} // what freezes at 0 °C is water
	f = a.Analyse(&half)
	if b := f.Hottest(); b == nil || math.Abs(float64(b.PointC)-111.6) > 0.1 || !strings.Contains(becauseOf(find(f, "boiling-margin-small")), "water boils at 112 °C") {
		t.Errorf("said to be half glycol, freezes at 0 °C: %+v", f.Boiling)
	}
	c.Tests = nil
	c.Loop.CapKPa = casetest.P(diagram.KPa(0))
	if flag := find(a.Analyse(c), "boiling-margin-small"); flag == nil || flag.Severity != evidence.Act {
		t.Errorf("water at 100 °C without a cap: %+v", flag)
	}
	c.Loop.CapKPa = nil
	if b := a.Analyse(c).Hottest(); b != nil {
		t.Errorf("cap unknown, yet %+v", b)
	}
}

// Expected ranges reach the points: a warm engine's upper hose stands 2 to 8 K
// under it (IR8, from memory), and a cold one at the air's temperature (DT7,
// common practice).
func TestPointsHaveRanges(t *testing.T) {
	a := analyst(t)
	for _, tt := range []struct {
		condition string
		point     diagram.Point
		inside    diagram.Celsius
	}{
		{warmIdle, diagram.EngineOut, ratedC - 4},
		{warmIdle, diagram.RadOut, 65},
		{cold5, diagram.RadIn, outsideC + 3},
		{hotFan, diagram.HeaterIn, ratedC},
		{warm2500, diagram.Vent, outsideC + 37}, // HT1's typical 57 °C
	} {
		r := a.Analyse(toCase(healthy("outlet-thermostat", tt.condition))).Rounds[0].Readings[tt.point]
		if r.Expected == nil || tt.inside < r.Expected.LowC || tt.inside > r.Expected.HighC || r.Expected.Source.Empty() || r.Expected.Class == "" || r.State != evidence.InRange {
			t.Errorf("%s %s: expected %+v, state %s", tt.condition, tt.point, r.Expected, r.State)
		}
	}
}

// Each side of the repair has its own hottest coolant, and a code froze its frame before it: a mended car that comes
// near to boiling isn't hidden behind what it did before, nor is it told what it no longer does.
func TestEachSideOfTheRepairHasItsMargin(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(100, 15))
	c.Loop.Coolant, c.Loop.CapKPa = cases.Coolant{Base: cases.Water}, casetest.P(diagram.KPa(50)) // 111.6 °C, as above
	c.Rounds = append(c.Rounds, toCase(healthy("outlet-thermostat", warm2500).open(98, 15)).Rounds...)
	c.Rounds[1].Stage = cases.AfterRepair
	c.Codes = []cases.Code{{Code: "P0217", FreezeFrame: cases.FreezeFrame{EctC: casetest.P(diagram.Celsius(109))}}}
	f := analyst(t).Analyse(c)
	before, after := f.BoilingOf(cases.BeforeRepair), f.BoilingOf(cases.AfterRepair)
	if before == nil || before.HottestC != 109 || after == nil || after.HottestC != 98 || f.Hottest().HottestC != 109 {
		t.Fatalf("a frame of 109 °C, 98 °C since: before %+v, after %+v", before, after)
	}
	told := map[cases.Stage]evidence.Severity{}
	for _, flag := range f.Flags {
		if flag.ID == "boiling-margin-small" {
			told[flag.Stage] = flag.Severity
		}
	}
	if told[cases.BeforeRepair] != evidence.Act || told[cases.AfterRepair] != evidence.Look || len(told) != 2 {
		t.Errorf("margins of 2.6 and 13.6 K are told as %v", told)
	}
}
