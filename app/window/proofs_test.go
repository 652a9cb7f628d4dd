package window

import (
	"strings"
	"testing"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/casetest"
)

// A demo case's repair is judged once its cars are there, and again by what is
// changed since.
func TestTheProofFollowsTheCase(t *testing.T) {
	w, _ := shown(t)
	openDemo(t, w, "Cold cabin on frosty mornings, P0128")
	w.tabs.SelectIndex(proofTab)
	d := w.proofData()
	if len(d.Pairs) != 3 || d.Curves == nil || len(d.Rows) == 0 || d.Verdict == kit.L("window.proof.computing") {
		t.Fatalf("pairs %v, %d differences, %q", d.Pairs, len(d.Rows), d.Verdict)
	}
	if (d.Open != "") != (d.Severity == "fine" && len(d.Repeat) > 0) {
		t.Errorf("%s, to repeat %q, told %q", d.Severity, d.Repeat, d.Open)
	}
	w.at.Desk.Edit("check", func(c *cases.Case) {
		c.Tests = append(c.Tests, cases.Test{Kind: "bubbles", Stage: cases.BeforeRepair, Seen: casetest.P(true)})
	})
	if more := w.proofData(); more.Severity == "fine" || len(more.Repeat) != len(d.Repeat)+1 {
		t.Errorf("a check that failed and is not repeated: %s, %q", more.Severity, more.Repeat)
	}
	w.at.Desk.Edit("codes", func(c *cases.Case) { c.Repair.CodesAfter = []string{"P0128"} })
	if d := w.proofData(); !strings.Contains(d.Codes, kit.L("window.proof.codes-back", "P0128")) || d.Severity == "fine" {
		t.Errorf("a code that came back: %q, %s", d.Codes, d.Severity)
	}
	w.at.Desk.Edit("rpm", func(c *cases.Case) {
		for i := range c.Rounds {
			if c.Rounds[i].Stage == cases.AfterRepair {
				c.Rounds[i].EngineRPM = casetest.P(4000.0)
			}
		}
	})
	if d := w.proofData(); d.Pair != -1 || len(d.Unmatched) != len(w.at.Desk.Case.Rounds) {
		t.Errorf("other engine speeds: pair %d, unmatched %v", d.Pair, d.Unmatched)
	}
}

// The bill says what can't be summed in its own place.
func TestTheBillInWords(t *testing.T) {
	r := cases.Repair{
		Currency: "EUR", TaxPercent: casetest.P(20.0), LabourHours: casetest.P(0.5), LabourPricePerHour: casetest.P(99.0),
		Parts: []cases.Part{{Name: "thermostat", Price: casetest.P(31.4)}, {Name: "seal"}},
	}
	b := billWords(r) // 31.40 + 49.50 = 80.90, and 16.18
	if b.Parts[0] != "31.40 EUR" || b.Parts[1] != "" || b.Labour != "49.50 EUR" || b.Tax != "16.18 EUR" || b.Total != "97.08 EUR" || b.Remark == "" {
		t.Errorf("%+v", b)
	}
	r.Currency = "coins"
	if b := billWords(r); b.Total != "" || !strings.Contains(b.Remark, "repair.currency") {
		t.Errorf("in coins: %+v", b)
	}
}

// The places are the currency's (ISO 4217): two of the euro, none of the yen, three
// of the Kuwaiti dinar.
func TestPricesHaveTheCurrencysPlaces(t *testing.T) {
	for _, tt := range []struct {
		code  string
		price float64
		want  string
	}{{"EUR", 64.9, "64.90"}, {"", 64.9, "64.90"}, {"JPY", 6490, "6490"}, {"KWD", 6.5, "6.500"}, {"EUR", 1e20, "100000000000000000000"}, {"coins", 64.9, "64.9"}} {
		if got := writePrice(tt.code, tt.price); got != tt.want {
			t.Errorf("writePrice(%q, %g) = %q, want %q", tt.code, tt.price, got, tt.want)
		}
	}
}

func TestWhatIsNoCodeIsToldAfterTheRepairToo(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.at.Desk.Edit("codes", func(c *cases.Case) { c.Repair.CodesAfter = []string{"P0128", "P12"} })
	if got := w.proofData().NoCodes; !strings.HasPrefix(got, "P12: no trouble code") {
		t.Errorf("told: %q", got)
	}
	w.at.Desk.Edit("codes", func(c *cases.Case) { c.Repair.CodesAfter = []string{cases.NoCodes} })
	if got := w.proofData().NoCodes; got != "" {
		t.Errorf("no codes: %q", got)
	}
}

// openDemo opens one of the invented cases in a new notebook.
func openDemo(t *testing.T, w *window, title string) {
	t.Helper()
	(&benchtest.Made{Bench: w.at}).OpenDemo(t, title)
}
