package access_test

import (
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/access"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

func advice(t *testing.T, c cases.Case) access.Advice {
	t.Helper()
	a, err := access.For(&c)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Every layout tells of its thermostat, in every language, and nothing is said
// by its mere name.
func TestEveryLayoutHasItsWords(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]bool{}
	for _, l := range loops {
		for _, cause := range cases.Words[cases.Cause]() {
			a := advice(t, cases.Case{Loop: cases.Loop{Layout: l.ID}, Vehicle: cases.Vehicle{Motive: cases.Hybrid}, Verdict: cases.Verdict{Cause: cause}})
			texts := a.Cautions
			for _, s := range a.Steps {
				texts = append(texts, s.Text)
			}
			for _, n := range a.Notes {
				texts = append(texts, n.What, n.Way, n.Renew, n.Hours, n.Class)
			}
			checkWords(t, texts, said)
			if strings.HasPrefix(string(cause), "thermostat-stuck") && len(a.Due()) < 2 {
				t.Errorf("%s, %s: %d places for the thermostat", l.ID, cause, len(a.Due()))
			}
		}
	}
	words, err := say.Catalogue(say.EN)
	if err != nil {
		t.Fatal(err)
	}
	for key := range words {
		if strings.HasPrefix(key, "access.") && !said[key] {
			t.Errorf("%q is never said", key)
		}
	}
}

func checkWords(t *testing.T, texts []say.Text, said map[string]bool) {
	t.Helper()
	for _, lang := range say.Langs() {
		by, err := say.In(lang, units.Metric())
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range texts {
			said[text.Key()] = true
			if got := by.Say(text); got == "" || got == text.Key() || strings.ContainsAny(got, "{}") {
				t.Errorf("%s: %q is said as %q", lang, text.Key(), got)
			}
		}
	}
}

// A thermostat in the inlet isn't under the outlet's hose, and one that is read
// of in print sits in the pump (TM 5-3825-229-14&P, para 4-46A).
func TestLayoutsDiffer(t *testing.T) {
	ids := func(layout string) []string {
		var out []string
		for _, n := range advice(t, cases.Case{Loop: cases.Loop{Layout: layout}, Verdict: cases.Verdict{Cause: "thermostat-late"}}).Due() {
			out = append(out, n.ID)
		}
		return out
	}
	inlet, outlet := ids("inlet-thermostat"), ids("outlet-thermostat")
	if !slices.Contains(inlet, "thermostat-in-pump") || slices.Contains(inlet, "thermostat-front") {
		t.Errorf("in the inlet: %v", inlet)
	}
	if slices.Contains(outlet, "thermostat-in-pump") || !slices.Contains(outlet, "thermostat-front") {
		t.Errorf("in the outlet: %v", outlet)
	}
	bottle := advice(t, cases.Case{Loop: cases.Loop{Layout: "inlet-thermostat-bottle"}})
	if !slices.ContainsFunc(bottle.Steps, func(s access.Step) bool { return s.ID == "bled-bottle" }) {
		t.Error("a loop with a bottle isn't bled into it")
	}
}

// What is due, done and warned of goes with the cause that was found: nothing of a thermostat with a radiator,
// the refrigerant (whose condenser stands before the core) with that alone.
func TestAdviceGoesWithTheCause(t *testing.T) {
	for cause, want := range map[cases.Cause]struct {
		part                    string
		thermostat, refrigerant bool
	}{
		"": {}, "thermostat-late": {"thermostat-front", true, false}, "radiator-restricted": {"radiator", false, true}, "cap-weak": {"cap", false, false},
	} {
		a := advice(t, cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Verdict: cases.Verdict{Cause: cause}})
		due := a.Due()
		if slices.ContainsFunc(due, func(n access.Note) bool { return n.ID == want.part }) != (want.part != "") {
			t.Errorf("%q: due are %+v, want %q among them", cause, due, want.part)
		}
		if slices.ContainsFunc(due, func(n access.Note) bool { return strings.HasPrefix(n.ID, "thermostat") }) != want.thermostat || len(a.Notes) <= len(due) {
			t.Errorf("%q: due are %+v of %d", cause, due, len(a.Notes))
		}
		if slices.ContainsFunc(a.Steps, func(s access.Step) bool { return s.ID == "right-way" }) != want.thermostat {
			t.Errorf("%q: the steps are %+v", cause, a.Steps)
		}
		if slices.ContainsFunc(a.Steps, func(s access.Step) bool { return s.ID == "bled-bottle" || s.ID == "bled-oil-cooler" }) {
			t.Errorf("%q: steps of other layouts: %+v", cause, a.Steps)
		}
		if slices.ContainsFunc(a.Cautions, func(c say.Text) bool { return c.Key() == "access.caution.refrigerant" }) != want.refrigerant {
			t.Errorf("%q: the cautions are %v", cause, a.Cautions)
		}
	}
}

func TestStepsRememberTheirTicks(t *testing.T) {
	a := advice(t, cases.Case{Repair: cases.Repair{StepsDone: []string{"drained", "of a newer program"}}})
	for _, s := range a.Steps {
		if s.Done != (s.ID == "drained") {
			t.Errorf("%s: done = %v", s.ID, s.Done)
		}
	}
	if a.Steps[0].ID != "cold" {
		t.Errorf("the work begins with %q", a.Steps[0].ID)
	}
	us, err := say.In(say.EN, units.US())
	if err != nil {
		t.Fatal(err)
	}
	if got := us.Say(a.Steps[0].Text); !strings.Contains(got, "122 °F") { // SF1: 50 °C, 122 °F
		t.Errorf("the cap is opened: %q", got)
	}
}
