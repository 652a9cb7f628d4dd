package report_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram"
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
	} {
		m.Proof.Verdict = tt.verdict
		text := flat(pdfText(t, written(t, tt.kind, m, report.Options{})))
		if strings.Contains(text, tt.words) != tt.want {
			t.Errorf("%s, %s: says %q: %v, want %v:\n%s", tt.kind, tt.verdict, tt.words, !tt.want, tt.want, text)
		}
	}
}
