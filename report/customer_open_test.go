package report_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/report"
)

// leaking is a car with a dead fan that loses its pressure through a weak cap or a leak too.
func leaking() *cases.Case {
	c := full()
	c.Verdict.Cause = "fan-not-running"
	c.Tests = []cases.Test{
		{Kind: "pressure-hold", Stage: cases.BeforeRepair, StartKPa: casetest.P(diagram.KPa(100)), EndKPa: casetest.P(diagram.KPa(50)), Minutes: casetest.P(10.0)},
		{Kind: "cap", Stage: cases.BeforeRepair, RatedKPa: casetest.P(diagram.KPa(110)), OpensKPa: casetest.P(diagram.KPa(70))},
	}
	return c
}

// Each check that the cause is no reason for is told, whole, and while that is open the level is looked at
// before each drive: a look once a week is too late for a leak (judgement).
func TestEverythingThatIsOpenIsTold(t *testing.T) {
	m := judged(t, leaking())
	m.Proof.Verdict = proof.NotShown
	text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
	for _, want := range []string{"More checks were not right: pressure hold: falls; cap test: opens too early", "which we still have to find.", "before each drive"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page doesn't say %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "once a week") {
		t.Errorf("once a week is enough for a leak:\n%s", text)
	}
	m.Proof.Verdict = proof.Fixed
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "More checks were not right at first") || !strings.Contains(text, "once a week") {
		t.Errorf("a loop that was proved tight is told to be open:\n%s", text)
	}
	for _, l := range say.Langs() {
		m.Proof.Verdict = proof.NotShown
		if pdf := written(t, report.Customer, m, report.Options{Lang: l, Page: report.Letter}); pageCount(pdf) != 1 || strings.Contains(pdfText(t, pdf), "…") {
			t.Errorf("%s: %d pages, or cut:\n%s", l, pageCount(pdf), pdfText(t, pdf))
		}
	}
}

// Who is told of no cause yet is told all the same not to drive an engine that gets too hot (stopping is M15 of
// testdata/trade/sources.md).
func TestAHotEngineIsNotDrivenBeforeItsCauseIsKnown(t *testing.T) {
	for name, tt := range map[string]struct {
		change func(*cases.Case)
		want   bool
	}{
		"told":     {func(c *cases.Case) { c.Codes = nil; c.Rounds = nil }, true},
		"coded":    {func(c *cases.Case) { c.Complaint.Symptoms, c.Rounds = nil, nil }, true},
		"measured": {func(c *cases.Case) { c.Codes, c.Complaint.Symptoms = nil, nil }, true},
		"cold":     {func(c *cases.Case) { c.Codes, c.Rounds, c.Complaint.Symptoms = nil, nil, []cases.Symptom{"gauge-low"} }, false},
	} {
		c := found("")
		tt.change(c)
		text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotMeasured), report.Options{})))
		for _, want := range []string{"Do not drive on with this fault", "switch the engine off as soon as the gauge nears the red", "Please do not drive on with it"} {
			if strings.Contains(text, want) != tt.want {
				t.Errorf("%s: %q is said: %v, want %v:\n%s", name, want, !tt.want, tt.want, text)
			}
		}
	}
}

// A round that was begun and not walked is not shown as what came after the repair.
func TestAnEmptyRoundIsNotShown(t *testing.T) {
	c := full()
	c.Rounds = append(c.Rounds, cases.Round{Label: "only begun", Stage: cases.AfterRepair})
	text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotShown), report.Options{})))
	if strings.Contains(text, "only begun") || !strings.Contains(text, c.Rounds[1].Label) {
		t.Errorf("what was not measured is shown:\n%s", text)
	}
}

// An engine whose oil may hold coolant is left off, whatever is known of the cause, until something was measured
// after a repair (common practice, no source).
func TestAnEngineWithMilkyOilIsLeftOff(t *testing.T) {
	for name, tt := range map[string]struct {
		c    *cases.Case
		want bool
	}{"open": {found(""), true}, "found": {found("combustion-leak"), true}, "repaired": {full(), false}} {
		tt.c.Complaint.Symptoms = append(tt.c.Complaint.Symptoms, "oil-milky")
		text := flat(pdfText(t, written(t, report.Customer, material(t, tt.c, ""), report.Options{})))
		if strings.Contains(text, "Leave the engine off") != tt.want || strings.Contains(text, "once a week") == tt.want {
			t.Errorf("%s: the page says\n%s", name, text)
		}
	}
}
