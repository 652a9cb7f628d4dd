package evidence_test

import (
	"encoding/json"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

func TestKeyAtTheWrongPlaceIsRemarked(t *testing.T) {
	c := &cases.Case{Extra: cases.Extra{"symptoms": json.RawMessage(`["coolant-loss"]`), "shop": json.RawMessage(`1`)}}
	f := find(analyst(t).Analyse(c), "key-misplaced")
	if f == nil || f.Text.String() != `The key “symptoms” isn't read where it stands. The format has it here: complaint.` {
		t.Fatalf("symptoms at the top: %+v", f)
	}
	said(t, "key-misplaced", f.Text)
	c.Extra = cases.Extra{"shop": json.RawMessage(`1`)}
	if f := find(analyst(t).Analyse(c), "key-misplaced"); f != nil {
		t.Errorf("a key that the format doesn't have: %s", f.Text)
	}
	c.Loop.Extra = cases.Extra{"title": json.RawMessage(`"hot"`)}
	if f := find(analyst(t).Analyse(c), "key-misplaced"); f == nil || !strings.Contains(f.Text.String(), "top of the file") {
		t.Errorf("a title in the loop: %+v", f)
	}
}

// Under 103 kPa water boils at 121 °C (IAPWS R7-97 by way of
// testdata/reference/boiling_cap_altitude.csv), a half mix some 8 K over it.
func TestUnknownFillingHasARangeToBoilIn(t *testing.T) {
	for ect, want := range map[float64]bool{100: false, 112: true} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(ect, 20))
		c.Loop.CapKPa, c.Loop.Coolant = casetest.P(diagram.KPa(103)), cases.Coolant{}
		f := find(analyst(t).Analyse(c), "boiling-unknown")
		if (f != nil) != want {
			t.Errorf("coolant at %.0f °C: %+v", ect, f)
		}
		if f != nil && (!strings.Contains(f.Text.String(), "121 °C") || !strings.Contains(becauseOf(f), "0 m assumed")) {
			t.Errorf("coolant at %.0f °C: %s %s", ect, f.Text, becauseOf(f))
		}
		c.Loop.Coolant = cases.Coolant{Base: cases.Water}
		if f := find(analyst(t).Analyse(c), "boiling-unknown"); f != nil {
			t.Errorf("a filling that is known: %s", f.Text)
		}
	}
}
