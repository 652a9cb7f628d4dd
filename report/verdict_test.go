package report_test

import (
	"regexp"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/report"
)

// A fault that a check speaks for is none of those that don't explain the case: a leak beside a burnt gasket. Nor is the
// verdict itself; that the measurements say otherwise is told with it.
func TestWhatAChecksSpeaksForIsNotRuledOut(t *testing.T) {
	c := full()
	c.Rounds, c.Codes, c.Complaint.Symptoms, c.Logs = nil, nil, []cases.Symptom{"oil-milky", "white-exhaust", "coolant-loss"}, nil
	c.Tests = []cases.Test{
		{Kind: "combustion-gas", Stage: cases.BeforeRepair, Result: "positive"},
		{Kind: "pressure-hold", Stage: cases.BeforeRepair, StartKPa: casetest.P(diagram.KPa(100)), EndKPa: casetest.P(diagram.KPa(62)), Minutes: casetest.P(10.0)},
		{Kind: "level", Stage: cases.BeforeRepair, State: "low"},
	}
	ruledOut := func(cause cases.Cause) (list, all string) {
		c.Verdict = cases.Verdict{Cause: cause, ConfirmedBy: "combustion-gas"}
		text := flat(pdfText(t, written(t, report.Record, judged(t, c), report.Options{})))
		m := regexp.MustCompile(`Doesn't explain it (.*?) Repair `).FindStringSubmatch(text)
		if m == nil {
			t.Fatalf("nothing is ruled out:\n%s", text)
		}
		return m[1], text
	}
	list, text := ruledOut("combustion-leak")
	if strings.Contains(list, "leak to the outside") || strings.Contains(list, "coolant low") || !strings.Contains(list, "fan not running") {
		t.Errorf("it rules out: %s", list)
	}
	if strings.Contains(text, "By what was measured") {
		t.Errorf("the likeliest cause is told to be less likely:\n%s", text)
	}
	list, text = ruledOut("fan-not-running")
	if strings.Contains(list, "fan not running") || !strings.Contains(text, "By what was measured under 1 %; likelier: combustion gas in coolant") {
		t.Errorf("a verdict against the measurements: ruled out %s in\n%s", list, text)
	}
}

// A sum that leaves something out doesn't call itself the total, and hours stand once.
func TestASumSaysWhatItHolds(t *testing.T) {
	c := full()
	for _, tt := range []struct {
		what  string
		price *float64 // of an hour
		parts []cases.Part
		total string
	}{
		{"unpriced work", nil, []cases.Part{{Name: "Radiator", Price: p(100.0)}}, "Total of what has a price 100.00"},
		{"an unpriced part", p(50.0), []cases.Part{{Name: "Radiator", Price: p(100.0)}, {Name: "Clip"}}, "Total of what has a price 220.00"},
		{"all priced", p(50.0), []cases.Part{{Name: "Radiator", Price: p(100.0)}}, "Total 220.00"},
	} {
		c.Repair.LabourPricePerHour, c.Repair.Parts = tt.price, tt.parts
		text := flat(pdfText(t, written(t, report.Record, material(t, c, ""), report.Options{})))
		if !strings.Contains(text, tt.total) || strings.Count(text, "2.4 h") != 2 { // the text is read out twice
			t.Errorf("%s: want %q, and the hours once:\n%s", tt.what, tt.total, text)
		}
	}
}
