package report_test

import (
	"regexp"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report"
)

// What confirmed the cause is told before and after the repair: no hose shows gas in the coolant.
func TestTheConfirmingCheckIsTold(t *testing.T) {
	c := full()
	c.Verdict = cases.Verdict{Cause: "combustion-leak", ConfirmedBy: "combustion-gas"}
	gas := func(s cases.Stage, r cases.GasResult) cases.Test {
		return cases.Test{Kind: "combustion-gas", Stage: s, Result: r}
	}
	c.Tests = []cases.Test{gas(cases.BeforeRepair, "positive")}
	page := func(o report.Options) string {
		return flat(pdfText(t, written(t, report.Customer, material(t, c, proof.Fixed), o)))
	}
	if text := page(report.Options{}); !strings.Contains(text, "Engine gas in the coolant gas found –") {
		t.Errorf("the gas is not told:\n%s", text)
	}
	c.Tests = append(c.Tests, gas(cases.AfterRepair, "negative"))
	for lang, want := range map[say.Lang]string{"en": "Engine gas in the coolant gas found no gas found", "de": "Gas gefunden", "es": "gas"} {
		if text := page(report.Options{Lang: lang}); !strings.Contains(text, want) {
			t.Errorf("%s: the page doesn't say %q:\n%s", lang, want, text)
		}
	}
	c.Verdict = cases.Verdict{Cause: "cap-weak", ConfirmedBy: "cap"}
	c.Tests = []cases.Test{{Kind: "cap", Stage: cases.BeforeRepair, Holds: casetest.P(false)}, {Kind: "cap", Stage: cases.AfterRepair, Holds: casetest.P(true)}}
	for _, lang := range say.Langs() {
		by, err := say.In(lang, units.Metric())
		if err != nil {
			t.Fatal(err)
		}
		text := page(report.Options{Lang: lang})
		for _, word := range strings.Fields(by.Of("outcome.cap.weak")) {
			if !strings.Contains(text, word) {
				t.Errorf("%s: how the cap came out is cut, without %q:\n%s", lang, word, text)
			}
		}
	}
	c.Verdict.ConfirmedBy = "hose-map"
	if text := page(report.Options{}); strings.Contains(text, "no gas found") {
		t.Errorf("a check that confirmed nothing is told:\n%s", text)
	}
}

// A difference that should be from below nothing to so much is told to be up to so much.
func TestADifferenceIsNoLessThanNothing(t *testing.T) {
	m := material(t, full(), proof.Fixed)
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 1}}
	k := func(v diagram.DeltaK) *diagram.DeltaK { return &v }
	m.Found.Deltas = []evidence.Delta{
		{Name: evidence.AcrossRadiator, Round: 0, ValueK: 46, ExpectedLowK: k(6), ExpectedHighK: k(20), State: evidence.High},
		{Name: evidence.AcrossRadiator, Round: 1, ValueK: 31, ExpectedLowK: k(-3), ExpectedHighK: k(75), State: evidence.InRange},
	}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "46 K 6 to 20 K 31 K up to 75 K") {
		t.Errorf("the difference is held to:\n%s", text)
	}
}

// What is as far out after the repair that helped was not the fault's before it, and bears no sign.
func TestWhatTheRepairLeavesOutWasNotTheFault(t *testing.T) {
	m := material(t, full(), proof.Fixed)
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 1}}
	m.Found.Deltas = nil
	shapes := func(before evidence.Reading) int {
		after := evidence.Reading{TrueC: 60, Expected: &evidence.Range{LowC: 18, HighC: 48}, State: evidence.High}
		m.Found.Rounds[0].Readings = map[diagram.Point]evidence.Reading{diagram.RadOut: before}
		m.Found.Rounds[1].Readings = map[diagram.Point]evidence.Reading{diagram.RadOut: after}
		pdf := tool(t, written(t, report.Customer, m, report.Options{}), "qpdf", "--qdf", "FILE", "-")
		return len(regexp.MustCompile(`(?m) ?[fBS]\*?$`).FindAllString(pdf, -1))
	}
	bare := shapes(evidence.Reading{TrueC: 63})
	if got := shapes(evidence.Reading{TrueC: 63, Expected: &evidence.Range{LowC: 17, HighC: 62}, State: evidence.High}); got != bare {
		t.Errorf("1 K out before and 12 K out after: %d shapes, %d without a sign", got, bare)
	}
	if got := shapes(evidence.Reading{TrueC: 90, Expected: &evidence.Range{LowC: 17, HighC: 62}, State: evidence.High}); got <= bare {
		t.Errorf("28 K out before and 12 K out after: %d shapes, %d without a sign", got, bare)
	}
}
