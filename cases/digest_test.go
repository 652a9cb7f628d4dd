package cases_test

import (
	"slices"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

// A vehicle that comes back is told by its number or, without one, by its owner, make and model; of one of
// which neither is known nothing is said, or all such would come back for ever.
func TestVehiclesAreToldApart(t *testing.T) {
	car := func(vin, owner, model string) uint64 {
		c := cases.Case{Vehicle: cases.Vehicle{VIN: vin, Make: "Arden", Model: model}, Customer: cases.Customer{Name: owner}}
		if model == "" {
			c.Vehicle.Make = ""
		}
		return cases.DigestOf(&c).Car
	}
	if car("1G4 AH59H45G118341", "", "") != car("1g4 ah59h45g118341", "Ada", "Lark") {
		t.Error("the same number is another vehicle with another owner")
	}
	if a := car("1G4-AH59H.45G118341", "", ""); a != car("1G4AH59H45G118341", "", "") {
		t.Error("the same number is another vehicle for being grouped")
	}
	if a, b := car("unknown", "Ada Thorn", "Lark"), car("unknown", "Bo Fenn", "Wren"); a == b || a != car("", "Ada Thorn", "Lark") {
		t.Error("two vehicles without a number are one")
	}
	if car("", "Ada Thorn", "Lark") != car("", "ada  thorn", "Lark") || car("", "Ada Thorn", "Lark") == car("", "Ada Thorn", "Wren") {
		t.Error("an owner's vehicles aren't told by their model")
	}
	if a, b := car("", "", "Lark"), car("", "Ada Thorn", ""); a != 0 || b != 0 {
		t.Errorf("a vehicle without an owner is %d, an owner without a vehicle %d, want 0", a, b)
	}
}

// However a code was noted, it counts as the same one.
func TestCodesCountInLetters(t *testing.T) {
	for _, noted := range []string{"P0128", " p0128", "0128", "0x01 28"} {
		d := cases.DigestOf(&cases.Case{Codes: []cases.Code{{Code: noted}, {Code: "0000"}, {Code: " "}}})
		if !slices.Equal(d.Codes, []string{"P0128"}) {
			t.Errorf("%q and two that are none count as %q", noted, d.Codes)
		}
	}
}

// Each condition finds the case and, turned round, doesn't; a near one doesn't find it either.
func TestConditions(t *testing.T) {
	c := cases.Case{
		Opened:  time.Date(2025, 3, 1, 9, 0, 0, 0, time.UTC),
		Vehicle: cases.Vehicle{Make: "Arden", Model: "Lark", Engine: "1.2 T", Year: casetest.P(2014), OdometerKm: casetest.P(120_000.0), Motive: cases.Hybrid},
		Loop:    cases.Loop{Layout: "heated-thermostat"}, Codes: []cases.Code{{Code: "P0128"}}, Tags: []string{"Fleet"},
		Complaint: cases.Complaint{Symptoms: []cases.Symptom{"slow-warm-up"}},
		Rounds:    []cases.Round{{Stage: cases.BeforeRepair}}, Verdict: cases.Verdict{Cause: "pump-weak"},
	}
	d := cases.DigestOf(&c)
	d.Guess = cases.Guess{First: "cap-weak", FirstP: 0.6}
	unknown := cases.DigestOf(&cases.Case{})
	words := func(f cases.Field, w string) cases.Condition { return cases.Condition{Field: f, Words: []string{w}} }
	within := func(f cases.Field, low, high float64) cases.Condition {
		return cases.Condition{Field: f, Low: low, High: high}
	}
	for _, tt := range []struct{ is, near cases.Condition }{
		{words(cases.ByCause, "pump-weak"), words(cases.ByCause, "cap-weak")},
		{words(cases.ByLayout, "heated-thermostat"), words(cases.ByLayout, "heated")},
		{words(cases.ByMotive, "hybrid"), words(cases.ByMotive, "electric")},
		{words(cases.ByStage, "closed"), words(cases.ByStage, "open")},
		{words(cases.ByStage, "before-repair"), words(cases.ByStage, "after-repair")},
		{words(cases.BySymptom, "slow-warm-up"), words(cases.BySymptom, "overheats-idle")},
		{words(cases.ByTag, "fleet"), words(cases.ByTag, "flee")},
		{words(cases.ByCode, "p01"), words(cases.ByCode, "P0128x")},
		{words(cases.ByMonth, "3"), words(cases.ByMonth, "4")},
		{words(cases.ByMake, "ard"), words(cases.ByMake, "den")},
		{words(cases.ByModel, "lark"), words(cases.ByModel, "larks")},
		{words(cases.ByEngine, "1.2"), words(cases.ByEngine, "1.4")},
		{words(cases.ByGuess, "wrong"), words(cases.ByGuess, "right")},
		{words(cases.ByGuess, "cap-weak"), words(cases.ByGuess, "pump-weak")},
		{within(cases.BySure, 60, 70), within(cases.BySure, 61, 70)},
		{within(cases.ByYear, 2014, 2014), within(cases.ByYear, 2015, 2016)},
		{within(cases.ByKm, 120_000, 150_000), within(cases.ByKm, 100_000, 119_999)},
		{cases.Between(c.Opened, time.Time{}), cases.Between(time.Time{}, c.Opened)},
	} {
		not := tt.is
		not.Not = true
		if !tt.is.Meets(&d) || not.Meets(&d) || tt.near.Meets(&d) {
			t.Errorf("%+v: %t, turned round %t; %+v: %t", tt.is, tt.is.Meets(&d), not.Meets(&d), tt.near, tt.near.Meets(&d))
		}
		if open := tt.is.Field == cases.ByStage; !open && (tt.is.Meets(&unknown) || tt.near.Meets(&unknown)) {
			t.Errorf("%+v or %+v finds a case of which nothing is known", tt.is, tt.near)
		}
	}
	if !words(cases.ByStage, "open").Meets(&unknown) || within(cases.ByYear, 0, 9999).Meets(&unknown) || within(cases.BySure, 0, 100).Meets(&unknown) {
		t.Error("a case of which nothing is known is closed, of a year, or was guessed of")
	}
}

// What was measured without a stage is of before the repair: in a case as the open format allows it nothing has to say so, and
// who asks for what was measured before the repair finds it.
func TestWhatHasNoStageIsOfBeforeTheRepair(t *testing.T) {
	for what, c := range map[string]cases.Case{
		"round": {Rounds: []cases.Round{{}}}, "log": {Logs: []cases.Log{{}}}, "check": {Tests: []cases.Test{{Kind: cases.CapTest}}},
	} {
		if d := cases.DigestOf(&c); !d.Before || d.After {
			t.Errorf("a %s without a stage is of before the repair %v, of after it %v", what, d.Before, d.After)
		}
	}
	if d := cases.DigestOf(&cases.Case{}); d.Before || d.After {
		t.Errorf("a case without a measurement has the stages %v %v", d.Before, d.After)
	}
}
