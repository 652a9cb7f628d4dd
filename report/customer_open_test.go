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
	for _, want := range []string{"More checks were not right: Pressure in the system: falls; Pressure of the cap: opens too early", "which we still have to find.", "before each drive"} {
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
		"small":    {func(c *cases.Case) { c.Codes[0].Code = " p0217"; c.Complaint.Symptoms, c.Rounds = nil, nil }, true},
		"bytes":    {func(c *cases.Case) { c.Codes[0].Code = "02 17"; c.Complaint.Symptoms, c.Rounds = nil, nil }, true},
		"measured": {func(c *cases.Case) { c.Codes, c.Complaint.Symptoms = nil, nil }, true},
		"gas": {func(c *cases.Case) {
			c.Codes, c.Rounds, c.Complaint.Symptoms = nil, nil, nil
			c.Tests = []cases.Test{{Kind: cases.GasTest, Stage: cases.BeforeRepair, Result: "positive"}}
		}, true},
		"gas gone": {func(c *cases.Case) {
			c.Codes, c.Rounds, c.Complaint.Symptoms = nil, nil, nil
			c.Tests = []cases.Test{{Kind: cases.GasTest, Stage: cases.BeforeRepair, Result: "positive"}, {Kind: cases.GasTest, Stage: cases.AfterRepair, Result: "negative"}}
		}, false},
		"empty": {func(c *cases.Case) {
			c.Codes, c.Rounds, c.Complaint.Symptoms = nil, nil, nil
			c.Tests = []cases.Test{{Kind: cases.LevelTest, Stage: cases.BeforeRepair, State: "empty"}}
		}, true},
		"dead fan": {func(c *cases.Case) {
			c.Codes, c.Rounds, c.Complaint.Symptoms = nil, nil, nil
			c.Tests = []cases.Test{{Kind: cases.FanTest, Stage: cases.BeforeRepair, Commanded: p(true), Runs: p(false)}}
		}, true},
		"cold": {func(c *cases.Case) { c.Codes, c.Rounds, c.Complaint.Symptoms = nil, nil, []cases.Symptom{"gauge-low"} }, false},
	} {
		c := found("")
		tt.change(c)
		text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotMeasured), report.Options{})))
		for _, want := range []string{"Do not drive on with this fault", "switch the engine off as soon as the temperature gauge nears the red", "Please do not drive on with it"} {
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

// An engine whose oil may hold coolant is left off, whatever is known of the cause, until the repair is shown to have
// worked (common practice, no source): a round that was begun or a check that passed shows nothing of the oil. Nowhere
// else does the page say that the car may be driven.
func TestAnEngineWithMilkyOilIsLeftOff(t *testing.T) {
	begun := full()
	begun.Rounds[1].Readings, begun.Rounds[1].EctC, begun.Rounds[1].Gauge = nil, nil, ""
	for name, tt := range map[string]struct {
		c     *cases.Case
		proof proof.Verdict
		want  bool
	}{
		"open": {found(""), "", true}, "found": {found("combustion-leak"), "", true}, "a mild fault": {found("heater-core-restricted"), "", true},
		"begun": {begun, proof.NotMeasured, true}, "not shown": {full(), proof.NotShown, true}, "not fixed": {full(), proof.NotFixed, true},
		"fixed": {full(), proof.Fixed, false}, "sound": {found(cases.Healthy), "", false},
	} {
		tt.c.Complaint.Symptoms = append(tt.c.Complaint.Symptoms, "oil-milky")
		text := flat(pdfText(t, written(t, report.Customer, material(t, tt.c, tt.proof), report.Options{})))
		if strings.Contains(text, "Leave the engine off") != tt.want || strings.Contains(text, "once a week") == tt.want || strings.Contains(text, "Please do not drive on") != tt.want {
			t.Errorf("%s: the page says\n%s", name, text)
		}
		if tt.want && (strings.Contains(text, "Please talk to us before") || strings.Contains(text, "You can drive")) {
			t.Errorf("%s: the page leaves the engine off and lets it be driven:\n%s", name, text)
		}
	}
}

// A car of which nothing is known yet is not told to have been repaired, nor measured again.
func TestAnOpenCaseWasNotRepaired(t *testing.T) {
	text := flat(pdfText(t, written(t, report.Customer, material(t, found(""), proof.NotMeasured), report.Options{})))
	for word, want := range map[string]bool{"What you told us": true, "Overheats standing, poor cabin heat.": true, "Nothing is repaired yet. We have to look further.": true, "measured again": false, "it is fixed": false} {
		if strings.Contains(text, word) != want {
			t.Errorf("the page says %q: %v, want %v:\n%s", word, !want, want, text)
		}
	}
}

// Who made a repair that nothing was measured after shows the numbers of before it as such, not as those of now; a check
// that confirmed the fault is told where no hose was read.
func TestWhatWasMeasuredBeforeIsNotNow(t *testing.T) {
	c := full()
	c.Rounds, c.Tests = c.Rounds[:1], nil
	page := func() string {
		return flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotMeasured), report.Options{})))
	}
	if text := page(); !strings.Contains(text, "outside 21 °C Before Should be") {
		t.Errorf("the time before the repair is told as now:\n%s", text)
	}
	c.Repair = cases.Repair{}
	if text := page(); !strings.Contains(text, "outside 21 °C Now Should be") {
		t.Errorf("a car that is as it came is told as before a repair:\n%s", text)
	}
	c.Rounds, c.Verdict = nil, cases.Verdict{Cause: "combustion-leak", ConfirmedBy: "combustion-gas"}
	c.Tests = []cases.Test{{Kind: "combustion-gas", Stage: cases.BeforeRepair, Result: "positive"}}
	if text := page(); !strings.Contains(text, "What we measured Now Engine gas in the coolant gas found") {
		t.Errorf("without a hose the check isn't told:\n%s", text)
	}
	c.Tests = append(c.Tests, cases.Test{Kind: "combustion-gas", Stage: cases.AfterRepair, Result: "negative"})
	m := material(t, c, proof.NotShown)
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "Before After Engine gas in the coolant gas found no gas found") {
		t.Errorf("without a hose the check after the repair isn't told:\n%s", text)
	}
}

// A code that came back is told, and the fault taken for there (judgement).
func TestACodeThatCameBackIsTold(t *testing.T) {
	m := material(t, full(), proof.NotShown)
	m.Proof.Codes.Read, m.Proof.Codes.Back = true, []string{"P0217"}
	text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
	for _, want := range []string{"A fault code came back", "Please do not drive on", "Until we are sure", "Do not drive on with this fault"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page doesn't say %q:\n%s", want, text)
		}
	}
}

// A loop that is called sound beside a check that came out badly isn't told to be in order, nor to be driven as before:
// low coolant is looked at before each drive (judgement).
func TestASoundLoopWithABadCheckStaysOpen(t *testing.T) {
	c := found(cases.Healthy)
	c.Complaint.Symptoms, c.Codes, c.Rounds = nil, nil, nil
	c.Tests = []cases.Test{{Kind: "level", Stage: cases.BeforeRepair, State: "low"}}
	m := judged(t, c)
	for _, l := range say.Langs() {
		if pdf := written(t, report.Customer, m, report.Options{Lang: l}); pageCount(pdf) != 1 {
			t.Errorf("%s: %d pages", l, pageCount(pdf))
		}
	}
	text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
	for word, want := range map[string]bool{"still looking for the cause": true, "This was not right: Coolant level: low": true, "before each drive": true,
		"is in order": false, "found none": false, "as it should be.": false, "drive on as before": false, "Nothing had to be changed": false} {
		if strings.Contains(text, word) != want {
			t.Errorf("the page says %q: %v, want %v:\n%s", word, !want, want, text)
		}
	}
	c.Tests[0].State = "full"
	if text := flat(pdfText(t, written(t, report.Customer, judged(t, c), report.Options{}))); !strings.Contains(text, "is in order") {
		t.Errorf("a sound loop is open:\n%s", text)
	}
}

// Beside a mild fault a second one is minded that may let the engine get hot or lose its coolant: whoever is told that
// the car may be driven is told of the gauge (belt and pump; common practice) and of the level (judgement).
func TestAMildFaultDoesNotHideASecondOne(t *testing.T) {
	belt := cases.Test{Kind: "pump-drive", Stage: cases.BeforeRepair, BeltOK: p(false), Play: p(true), Weep: p(true)}
	const gauge, level = "If it goes into the red, stop", "before each drive"
	for name, tt := range map[string]struct {
		c     *cases.Case
		test  cases.Test
		wants []string
	}{
		"belt": {found("thermostat-stuck-open"), belt, []string{"You can drive the car", gauge}},
		"leak": {found("heater-core-restricted"), leaking().Tests[0], []string{"You can drive the car", level}},
		"fan":  {found("fan-always-running"), leaking().Tests[0], []string{"You can drive the car", level}},
		"done": {full(), belt, []string{"reach the middle", gauge}},
	} {
		if name == "done" {
			tt.c.Verdict.Cause = "thermostat-stuck-open"
		}
		tt.c.Complaint.Symptoms, tt.c.Codes, tt.c.Tests = nil, nil, nil
		m := judged(t, tt.c)
		if m.Beside != nil {
			t.Fatalf("%s: open without the check", name)
		}
		m.Proof.Verdict = proof.NotShown
		alone := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
		tt.c.Tests = []cases.Test{tt.test}
		m = judged(t, tt.c)
		m.Proof.Verdict = proof.NotShown
		text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
		for i, want := range tt.wants {
			if !strings.Contains(text, want) || i > 0 && strings.Contains(alone, want) {
				t.Errorf("%s: %q isn't said, or is without the check too:\n%s", name, want, text)
			}
		}
		for _, l := range say.Langs() {
			if pdf := written(t, report.Customer, m, report.Options{Lang: l, Page: report.Letter}); pageCount(pdf) != 1 || strings.Contains(pdfText(t, pdf), "…") {
				t.Errorf("%s, %s: %d pages, or cut:\n%s", name, l, pageCount(pdf), pdfText(t, pdf))
			}
		}
	}
}

// The title says all of the cause, one that is only likely too; A4 is the narrower page.
func TestNoTitleIsCut(t *testing.T) {
	for _, cause := range cases.Words[cases.Cause]() {
		c := found(cause)
		c.Verdict.ConfirmedBy = ""
		for _, l := range say.Langs() {
			if text := flat(pdfText(t, written(t, report.Customer, material(t, c, ""), report.Options{Lang: l}))); strings.Contains(text, "…") {
				t.Errorf("%s, %s: cut:\n%.300s", cause, l, text)
			}
		}
	}
}
