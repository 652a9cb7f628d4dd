package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// withDemo is a window on a notebook with the demo's cases.
func withDemo(t *testing.T) *window {
	t.Helper()
	w, _ := shown(t)
	if err := fillDemo(w.desk.ctx, w.desk.store); err != nil {
		t.Fatal(err)
	}
	w.use(w.desk.store)
	w.trains.coach.mind.crowds.Draws = 2
	return w
}

func TestAFilterIsClickedAndItsSearchKept(t *testing.T) {
	w := withDemo(t)
	all := w.pages.total
	w.searchFor("stage:closed cause:pump-weak")
	if w.pages.total == 0 || w.pages.total >= all {
		t.Errorf("filtered %d of %d", w.pages.total, all)
	}
	w.keepSearch("pumps", "cause:pump-weak")
	list, err := w.desk.store.SavedSearches(w.desk.ctx)
	if err != nil || len(list) != 1 {
		t.Errorf("kept %v, %v", list, err)
	}
	w.searchFor("peckwell")
	if w.pages.total == 0 || len(w.pages.found) == 0 {
		t.Errorf("a customer's name finds %d, %d snippets", w.pages.total, len(w.pages.found))
	}
}

func TestTheHistoryPageIsFilled(t *testing.T) {
	w := withDemo(t)
	w.enter(historyRoom)
	h, err := shopHistory(w.desk.ctx, w.desk.store)
	if err != nil || h.Closed == 0 {
		t.Fatal(h.Closed, err)
	}
	d := historyData(h, nil, w.desk.units)
	if len(d.Left) == 0 || len(d.Left[0].Lines) == 0 || !strings.Contains(d.Left[0].Lines[0].Name.Search, "code:") {
		t.Errorf("history %+v", d.Left)
	}
	for _, l := range d.Left[0].Lines {
		if l.Note == "" {
			t.Errorf("%s of a handful of cases doesn't say that it is few", l.Name.Text)
		}
	}
	w.enter(caseRoom)
}

// A trainee plays a class through, and a trainer reads the results.
func TestPracticeIsPlayedThrough(t *testing.T) {
	w := withDemo(t)
	w.searchFor("cause:pump-weak,thermostat-stuck-open stage:closed")
	n := w.pages.total
	w.enter(practiceRoom)
	w.makeClass("Tuesday")
	if d, err := w.startData(); err != nil || len(d.Classes) != 1 || len(d.Classes[0].Cases) != n || n < 2 {
		t.Fatalf("classes %+v, %v; want one of %d", d.Classes, err, n)
	}
	w.practice.SetTrainee("Liv")
	w.practiseClass("Tuesday")
	for left := n; left > 0; left-- {
		s := w.trains.session
		if s == nil {
			t.Fatalf("no case begins with %d left", left)
		}
		if w.rail.Visible() {
			t.Error("the list, which tells causes, is in sight during practice")
		}
		w.buyEvidence(0)
		w.buyEvidence(len(s.Items()) - 1)
		data := w.sessionData()
		bought := 0
		for _, g := range data.Groups {
			for _, i := range g.Items {
				if i.Bought && i.Says != "" {
					bought++
				}
			}
		}
		if bought != 2 || s.Minutes() == 0 {
			t.Errorf("%d items say something after two were bought, %g min", bought, s.Minutes())
		}
		w.answerPractice(s.Truth(), 0.9)
		w.nextOfClass()
	}
	if w.trains.session != nil || w.rail.Visible() {
		t.Error("after the last case it doesn't end, or the list is in sight before the next one")
	}
	w.practice.OnTrainer(true)
	if !w.rail.Visible() {
		t.Error("a trainer has no list to choose from")
	}
	results, err := w.desk.store.Results(w.desk.ctx, "Tuesday")
	if err != nil || len(results) != n || results[0].Trainee != "Liv" || results[0].Bits <= 0 || len(results[0].Bought) != 2 {
		t.Errorf("results %+v, %v", results, err)
	}
	rows := resultRows(results)
	if len(rows) != 1 || rows[0].Right != rows[0].Cases {
		t.Errorf("rows %+v", rows)
	}
	path := filepath.Join(t.TempDir(), "r.csv")
	if err := writeFile(path, func(f *os.File) error { return writeResults(f, results) }); err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(path); err != nil || strings.Count(string(text), "\n") != n+1 {
		t.Errorf("the table %q, %v", text, err)
	}
	w.moveInClass(0, 0)
	if d, err := w.startData(); err != nil || len(d.Classes[0].Cases) != n-1 {
		t.Errorf("after taking one out %+v, %v", d.Classes, err)
	}
}

func TestRetiredCasesAreLeftOut(t *testing.T) {
	w := withDemo(t)
	before, err := w.practisable()
	if err != nil || len(before) == 0 {
		t.Fatal(before, err)
	}
	if err := w.desk.store.Retire(w.desk.ctx, before[0], true); err != nil {
		t.Fatal(err)
	}
	if after, err := w.practisable(); err != nil || len(after) != len(before)-1 {
		t.Errorf("%d of %d left, %v", len(after), len(before), err)
	}
}

// The difficulties differ by how likely the program holds the truth.
func TestSimulatedCasesOfEachDifficulty(t *testing.T) {
	w, _ := shown(t)
	for _, how := range view.Difficulties() {
		c, ok := w.trains.coach.simulated(7, how)
		if !ok {
			t.Errorf("no %s car was found", how)
			continue
		}
		p := w.trains.coach.mind.guess(c).TruthP
		if how == view.Easy && p < 0.5 || how == view.Hard && p > 0.5 {
			t.Errorf("of a %s car the truth is held %g likely", how, p)
		}
		if len(c.Tests) != len(cases.Words[cases.TestKind]()) {
			t.Errorf("a %s car has %d checks to buy", how, len(c.Tests))
		}
	}
}

// What the program held likeliest is kept when a verdict is given.
func TestAVerdictKeepsTheGuess(t *testing.T) {
	w := withDemo(t)
	w.searchFor("stage:open")
	s, ok := w.pages.row(0)
	if !ok {
		t.Skip("the demo has no open case")
	}
	w.openCase(s.ID)
	w.desk.edit("verdict", func(c *cases.Case) { c.Verdict.Cause = "cap-weak" })
	d, err := w.desk.store.Digest(w.desk.ctx, s.ID)
	if err != nil || d.Guess.First == "" || d.Guess.FirstP <= 0 {
		t.Errorf("guess %+v, %v", d.Guess, err)
	}
}

func TestImportAsksAboutConflicts(t *testing.T) {
	w := withDemo(t)
	mine := w.desk.c
	theirs := casetest.Invented(1)
	theirs.ID = mine.ID
	path := filepath.Join(t.TempDir(), "theirs.zip")
	if err := writeFile(path, func(f *os.File) error { return exchange.WriteBundle(f, cases.Bundle{Case: theirs}) }); err != nil {
		t.Fatal(err)
	}
	w.takeAll([]string{path})
	if c, err := w.desk.store.Get(w.desk.ctx, mine.ID); err != nil || c.Title != mine.Title {
		t.Errorf("before the choice it is %q, %v", c.Title, err)
	}
	total := w.pages.total
	for _, o := range test.LaidOutObjects(w.window.Canvas().Overlays().Top()) {
		if b, ok := o.(*widget.Button); ok && b.Text == kit.L("window.share.keep-both") {
			test.Tap(b)
			break
		}
	}
	if w.pages.total != total+1 || w.window.Canvas().Overlays().Top() != nil || w.desk.c.Title != theirs.Title {
		t.Errorf("keeping both leaves %d of %d cases, %q open", w.pages.total, total, w.desk.c.Title)
	}
	w.openCase(mine.ID)
	w.resolve(cases.Met{ID: mine.ID, Theirs: cases.Bundle{Case: theirs}}, cases.TakeTheirs)
	if w.desk.c.Title != theirs.Title {
		t.Errorf("after the choice %q is open", w.desk.c.Title)
	}
	w.desk.undo()
	if w.desk.c.Title != mine.Title {
		t.Errorf("undone it is %q", w.desk.c.Title)
	}
}
