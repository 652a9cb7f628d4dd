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

// A pressure that falls is told of beside a dead fan, which is no reason for it (common practice,
// no source), to the customer until the loop is shown to be sound.
func TestSecondFaultIsTold(t *testing.T) {
	const open = "That has another reason, which we still have to find"
	c := full()
	c.Verdict.Cause = "fan-not-running"
	c.Tests = []cases.Test{{Kind: "pressure-hold", Stage: cases.BeforeRepair, StartKPa: casetest.P(diagram.KPa(100)), EndKPa: casetest.P(diagram.KPa(50)), Minutes: casetest.P(10.0)}}
	m := judged(t, c)
	if m.Beside == nil {
		t.Fatal("nothing is open")
	}
	for _, tt := range []struct {
		kind    report.Kind
		verdict proof.Verdict
		words   string
		want    bool
	}{
		{report.Record, proof.NotShown, "A second fault?", true},
		{report.Customer, proof.NotShown, open, true},
		{report.Customer, proof.Fixed, open, false},
		{report.Customer, proof.Fixed, "That is put right too", true},
	} {
		m.Proof.Verdict = tt.verdict
		text := flat(pdfText(t, written(t, tt.kind, m, report.Options{})))
		if strings.Contains(text, tt.words) != tt.want {
			t.Errorf("%s, %s: says %q: %v, want %v:\n%s", tt.kind, tt.verdict, tt.words, !tt.want, tt.want, text)
		}
	}
}

// The customer is told what was really measured, and a cause that nothing has confirmed as what is most
// likely.
func TestNothingIsClaimedThatWasNotDone(t *testing.T) {
	c := full()
	c.Verdict = cases.Verdict{Cause: "thermostat-stuck-open"}
	c.Rounds, c.Tests, c.Repair = nil, nil, cases.Repair{}
	c.Logs = []cases.Log{{Name: "written down", Stage: cases.BeforeRepair, TimeS: []float64{0, 60, 120}, EctC: []float64{10, 14, 19}}}
	text := flat(pdfText(t, written(t, report.Customer, judged(t, c), report.Options{})))
	if !strings.Contains(text, "Most likely: ") || !strings.Contains(text, "We watched how the engine warms up") || !strings.Contains(text, "minutes") || strings.Contains(text, "We measured the temperatures of the hoses") {
		t.Errorf("of a warm-up alone the page says:\n%s", text)
	}
	c.Verdict.ConfirmedBy = "thermostat-bench"
	if text := flat(pdfText(t, written(t, report.Customer, judged(t, c), report.Options{}))); strings.Contains(text, "Most likely: ") {
		t.Errorf("a confirmed cause is only likely:\n%s", text)
	}
}

// The customer is told of a check that the cause is no reason for in the words of the table, in every language, and
// not in those of the shop.
func TestASecondFaultIsToldPlainly(t *testing.T) {
	c := full()
	c.Verdict.Cause = "fan-not-running"
	c.Tests = []cases.Test{{Kind: "pump-drive", Stage: cases.BeforeRepair, BeltOK: p(true), Play: p(false), Weep: p(true)}}
	m := judged(t, c)
	m.Proof.Verdict = proof.NotShown
	for l, want := range map[say.Lang]string{say.EN: "Pump and its belt: pump is leaking.", say.DE: "Pumpe und Riemen: Pumpe ist undicht.", say.ES: "Bomba y correa: la bomba pierde líquido."} {
		text := flat(pdfText(t, written(t, report.Customer, m, report.Options{Lang: l})))
		if !strings.Contains(text, want) {
			t.Errorf("%s: the page doesn't say %q:\n%s", l, want, text)
		}
	}
}
