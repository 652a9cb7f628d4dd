package report_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram/say"
	"loopbook/report"
)

// What gives the answer away stands behind the last question, on a page that can
// be left out.
func TestTheAnswerStandsOnAPageOfItsOwn(t *testing.T) {
	c := full()
	m := material(t, c, proof.Fixed)
	m.Shop = report.Shop{}
	away := []string{
		"radiator restricted inside", c.Title, c.Verdict.Note, c.Lesson, "Round 2", "repaired", "Fixed", "in range",
		"colder than", "Radiator, 1", c.Repair.AccessNote,
	}
	questions := flat(pdfText(t, written(t, report.Trainer, m, report.Options{WithoutAnswer: true})))
	for _, w := range away {
		if strings.Contains(questions, flat(w)) {
			t.Errorf("the questions give %q away", w)
		}
	}
	for _, w := range []string{"Round 1: hot idle, fan running", "103.5", "P0217", "How sure are you, from 0 to 100 %?", "The cause:", "Scalding", "Face scan of the core"} {
		if !strings.Contains(questions, w) {
			t.Errorf("the questions lack %q", w)
		}
	}
	pages := pdfPages(t, written(t, report.Trainer, m, report.Options{}))
	at := -1
	for i, page := range pages {
		if strings.Contains(page, "THE ANSWER") {
			at = i
		}
	}
	if at < 0 || !strings.Contains(flat(strings.Join(pages[at:], " ")), "radiator restricted inside") || strings.Contains(flat(pages[at]), "How sure are you") {
		t.Errorf("the answer is on page %d of %d and not by itself", at+1, len(pages))
	}
}

func TestTrainersSheetNamesNobody(t *testing.T) {
	text := flat(pdfText(t, written(t, report.Trainer, material(t, full(), ""), report.Options{})))
	for _, w := range []string{"Customer 7", "TESTVIN0000000042", "counter", "Nordhang Garage", "CASE-0042", full().Rounds[0].Taken.Format("2006-01-02")} {
		if strings.Contains(text, w) {
			t.Errorf("the sheet names %q", w)
		}
	}
}

func TestTrainersSheetOfAnyCase(t *testing.T) {
	for name, make := range builders() {
		for _, l := range say.Langs() {
			pdf := written(t, report.Trainer, material(t, make(), ""), report.Options{Lang: l})
			if tool(t, pdf, "qpdf", "--check", "FILE"); pageCount(pdf) == 0 {
				t.Errorf("%s, %s: no page", name, l)
			}
		}
	}
	if n := pageCount(written(t, report.Trainer, material(t, &cases.Case{}, ""), report.Options{WithoutAnswer: true})); n > 2 {
		t.Errorf("an empty case has %d pages of questions", n)
	}
}

// Nobody is asked what a round shows that was only begun.
func TestTrainersSheetHasNoEmptyRound(t *testing.T) {
	c := full()
	c.Rounds = append(c.Rounds, cases.Round{Label: "Only begun", Stage: cases.BeforeRepair, EngineRPM: p(2500.0)})
	if text := flat(pdfText(t, written(t, report.Trainer, judged(t, c), report.Options{}))); strings.Contains(text, "Only begun") {
		t.Error("a round without a reading has its question")
	}
}

// The checks stand where their turn comes at the bay: the cold look before the first round, what would answer for the hose map
// behind it, and what confirmed the verdict at last.
func TestTrainersSheetDoesNotAnswerForTheHoseMap(t *testing.T) {
	c := full()
	c.Verdict.ConfirmedBy = string(cases.CoreTest)
	c.Tests = []cases.Test{
		{Kind: cases.CoreTest, Stage: cases.BeforeRepair, ShownC: [][]float64{{92, 91}, {84, 61}}},
		{Kind: cases.PumpTest, Stage: cases.BeforeRepair, BeltOK: p(true)},
		{Kind: cases.LevelTest, Stage: cases.BeforeRepair, State: "full"},
	}
	text := flat(pdfText(t, written(t, report.Trainer, judged(t, c), report.Options{WithoutAnswer: true})))
	last := -1
	for _, w := range []string{"Workshop checks", "Coolant level", "Round 1:", "Further checks", "Pump and its drive", "The confirming check", "Face scan of the core"} {
		at := strings.Index(text, w)
		if at <= last {
			t.Errorf("%q stands at %d, not behind %d", w, at, last)
		}
		last = at
	}
}
