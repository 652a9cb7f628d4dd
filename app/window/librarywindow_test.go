package window

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	view "loopbook/app/ui/practice"
	"loopbook/app/ui/share"
	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// withDemo is a window on a notebook with the demo's cases.
func withDemo(t *testing.T) *window {
	t.Helper()
	w, _ := shown(t)
	if err := library.FillDemo(w.at.Ctx, w.at.Desk.Store); err != nil {
		t.Fatal(err)
	}
	w.use(w.at.Desk.Store)
	w.trains.coach.Mind.Crowds.Draws = 2
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
	list, err := w.at.Desk.Store.SavedSearches(w.at.Ctx)
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
	h, err := library.History(w.at.Ctx, w.at.Desk.Store)
	if err != nil || h.Closed == 0 {
		t.Fatal(h.Closed, err)
	}
	d := historyData(h, nil, w.at.Desk.Units)
	if len(d.Left) == 0 || len(d.Left[0].Lines) == 0 || !strings.Contains(d.Left[0].Lines[0].Name.Search, "code:") {
		t.Errorf("history %+v", d.Left)
	}
	for _, l := range d.Left[0].Lines {
		if l.Note == "" {
			t.Errorf("%s of a handful of cases doesn't say that it is few", l.Name.Text)
		}
	}
	w.goTo(proofTab)
	if w.rooms.now != caseRoom || w.tabs.SelectedIndex() != proofTab {
		t.Errorf("from the history a page's key leads to room %v, page %d", w.rooms.now, w.tabs.SelectedIndex())
	}
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
	if w.goTo(verdictTab); w.rooms.now != practiceRoom {
		t.Error("a key shows the answer to who practises")
	}
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
		if want := fmt.Sprintf("Case %d of %d, Tuesday", n-left+1, n); data.Place != want {
			t.Errorf("it is said to be %q, want %q", data.Place, want)
		}
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
	results, err := w.at.Desk.Store.Results(w.at.Ctx, "Tuesday")
	if err != nil || len(results) != n || results[0].Trainee != "Liv" || results[0].Bits <= 0 || len(results[0].Bought) != 2 {
		t.Errorf("results %+v, %v", results, err)
	}
	rows := resultRows(results)
	if len(rows) != 1 || rows[0].Right != rows[0].Cases {
		t.Errorf("rows %+v", rows)
	}
	path := filepath.Join(t.TempDir(), "r.csv")
	if err := library.WriteFile(path, func(f *os.File) error { return writeResults(f, results) }); err != nil {
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
	if err := w.at.Desk.Store.Retire(w.at.Ctx, before[0], true); err != nil {
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
		c, ok := simulated(w.trains.coach, 7, how)
		if !ok {
			t.Errorf("no %s car was found", how)
			continue
		}
		p := w.trains.coach.Mind.Guess(c).TruthP
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
	w.at.Desk.Edit("verdict", func(c *cases.Case) { c.Verdict.Cause = "cap-weak" })
	d, err := w.at.Desk.Store.Digest(w.at.Ctx, s.ID)
	if err != nil || d.Guess.First == "" || d.Guess.FirstP <= 0 {
		t.Errorf("guess %+v, %v", d.Guess, err)
	}
}

// button finds a button by its words in the dialog on top.
func button(t *testing.T, w *window, words string) fyne.Tappable {
	t.Helper()
	if top := w.window.Canvas().Overlays().Top(); top != nil {
		for _, o := range test.LaidOutObjects(top) {
			if b, ok := o.(*kit.Button); ok && b.Text == words {
				return b
			}
		}
	}
	t.Fatalf("no button says %q", words)
	return nil
}

// topSays are the words of the dialog on top; "": there is none.
func topSays(w *window) string {
	top := w.window.Canvas().Overlays().Top()
	if top == nil {
		return ""
	}
	var words []string
	for _, o := range test.LaidOutObjects(top) {
		if l, ok := o.(*widget.Label); ok {
			words = append(words, l.Text)
		}
	}
	return strings.Join(words, "\n")
}

func TestImportAsksAboutConflicts(t *testing.T) {
	w := withDemo(t)
	mine := w.at.Desk.Case
	theirs := casetest.Invented(1)
	theirs.ID = mine.ID
	path := filepath.Join(t.TempDir(), "theirs.zip")
	if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteBundle(f, cases.Bundle{Case: theirs}) }); err != nil {
		t.Fatal(err)
	}
	w.takeAll([]string{path})
	if c, err := w.at.Desk.Store.Get(w.at.Ctx, mine.ID); err != nil || c.Title != mine.Title {
		t.Errorf("before the choice it is %q, %v", c.Title, err)
	}
	total := w.pages.total
	test.Tap(button(t, w, kit.L("window.share.keep-both")))
	if w.pages.total != total+1 || w.window.Canvas().Overlays().Top() != nil || w.at.Desk.Case.Title != theirs.Title {
		t.Errorf("keeping both leaves %d of %d cases, %q open", w.pages.total, total, w.at.Desk.Case.Title)
	}
	w.openCase(mine.ID)
	w.settle([]cases.Met{{ID: mine.ID, Theirs: cases.Bundle{Case: theirs}}}, cases.TakeTheirs, func() {})
	if w.at.Desk.Case.Title != theirs.Title {
		t.Errorf("after the choice %q is open", w.at.Desk.Case.Title)
	}
	w.at.Desk.Undo()
	if w.at.Desk.Case.Title != mine.Title {
		t.Errorf("undone it is %q", w.at.Desk.Case.Title)
	}
}

// theirsOf are conflicts with the first cases of the list.
func theirsOf(t *testing.T, w *window, n int) (list []cases.Met) {
	t.Helper()
	page, err := w.at.Desk.Store.Search(w.at.Ctx, cases.Query{Limit: n})
	if err != nil || len(page.Items) != n {
		t.Fatal(page.Items, err)
	}
	for i, s := range page.Items {
		mine, err := w.at.Desk.Store.Get(w.at.Ctx, s.ID)
		if err != nil {
			t.Fatal(err)
		}
		theirs := mine
		theirs.Title = fmt.Sprint("Told differently ", i)
		list = append(list, cases.Met{Meeting: cases.MeetsOther, ID: s.ID, Mine: mine, Theirs: cases.Bundle{Case: theirs}})
	}
	return list
}

// Of several conflicts one choice may settle the rest, and Escape leaves what is left.
func TestOneChoiceSettlesTheRest(t *testing.T) {
	w := withDemo(t)
	list := theirsOf(t, w, 3)
	title := func(i int) string {
		c, err := w.at.Desk.Store.Get(w.at.Ctx, list[i].ID)
		if err != nil {
			t.Fatal(err)
		}
		return c.Title
	}
	w.took(library.Takings{Files: 3, Of: 3, Met: list, Conflicts: list})
	if says := topSays(w); !strings.Contains(says, kit.L("window.share.taken", 0, 0, 3)) {
		t.Errorf("at first it says %q", says)
	}
	test.Tap(button(t, w, kit.L("window.frame.close")))
	if says := topSays(w); !strings.Contains(says, kit.L("window.share.conflict-of", 1, 3, titleOf(list[0].Mine))) {
		t.Errorf("then it says %q", says)
	}
	test.Tap(button(t, w, kit.L("window.share.keep-mine")))
	w.window.Canvas().FocusNext()
	w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if topSays(w) != "" || title(0) != list[0].Mine.Title || title(1) != list[1].Mine.Title {
		t.Errorf("after Escape %q is shown, and the cases are %q, %q", topSays(w), title(0), title(1))
	}
	w.settleConflicts(list, 3)
	for _, o := range test.LaidOutObjects(w.window.Canvas().Overlays().Top()) {
		if c, ok := o.(*kit.Check); ok {
			c.SetChecked(true)
		}
	}
	test.Tap(button(t, w, kit.L("window.share.take-theirs")))
	for i := range list {
		if title(i) != list[i].Theirs.Case.Title {
			t.Errorf("case %d is %q", i, title(i))
		}
	}
	if topSays(w) != "" {
		t.Errorf("at the end it says %q", topSays(w))
	}
}

func TestAStoppedImportSaysWhatStays(t *testing.T) {
	w := withDemo(t)
	w.took(library.Takings{Files: 4, Of: 9, Met: []cases.Met{{Meeting: cases.MeetsNone, ID: w.at.Desk.Case.ID}}, Titles: []string{"one"}})
	if says := topSays(w); !strings.Contains(says, kit.L("window.share.stopped", 4, 9)) {
		t.Errorf("it says %q", says)
	}
}

// What goes wrong while something is under way is told, unless a person stopped it.
func TestAFailingExportIsTold(t *testing.T) {
	w := withDemo(t)
	w.shareTo(share.Wish{}, filepath.Join(t.TempDir(), "no such folder", "x.zip"))
	if says := topSays(w); !strings.Contains(says, "can't be written") {
		t.Errorf("it says %q", says)
	}
}

// What was written is said, with its place: nothing else in the window shows it.
func TestAnExportSaysWhereItLies(t *testing.T) {
	w := withDemo(t)
	for want, wish := range map[string]share.Wish{
		"Without the customer, kept as": {Anonymous: true},
		"Kept as":                       {},
	} {
		path := filepath.Join(t.TempDir(), "a.zip")
		w.shareTo(wish, path)
		if says := topSays(w); !strings.Contains(says, want) || !strings.Contains(says, path) {
			t.Errorf("it says %q", says)
		}
		if _, err := os.Stat(path); err != nil {
			t.Error(err)
		}
	}
}

// The preview is made apart from the window, and only the newest wish is shown.
func TestThePreviewFollowsTheNewestWish(t *testing.T) {
	w := withDemo(t)
	w.at.Desk.Edit("customer", func(c *cases.Case) { c.Customer.Name, c.Lesson = "Dorian Peckwell", "Ask at the green gate." })
	var waiting []func()
	w.at.Start = func(do func()) { waiting = append(waiting, do) }
	e := share.NewExport([]string{"this", "shown", "all", "table"})
	p := w.newSharePreview(e)
	says := func() (text string) { // in the part that scrolls
		for _, o := range e.Content().(*fyne.Container).Objects {
			if s, ok := o.(*container.Scroll); ok {
				text = kittest.Texts(s.Content)
			}
		}
		return text
	}
	p.show(share.Wish{Anonymous: true, Hide: "green"})
	p.show(share.Wish{Anonymous: true, Hide: "gate"})
	if !strings.Contains(says(), kit.L("window.share.preview-making")) {
		t.Errorf("while it is made: %s", says())
	}
	for _, do := range waiting {
		do()
	}
	if text := says(); !strings.Contains(text, "Ask at the green "+anonymous.Hidden) || strings.Contains(text, "customer.") || !strings.Contains(text, "Customer · name") {
		t.Errorf("the newest wish shows %s", text)
	}
	waiting = nil
	p.show(share.Wish{Anonymous: true})
	p.show(share.Wish{})
	for _, do := range waiting {
		do()
	}
	if text := says(); !strings.Contains(text, kit.L("window.share.whole-text")) || strings.Contains(text, "Customer · name") {
		t.Errorf("without Anonymous: %s", text)
	}
}

// An answer that is still being judged when its case is given up doesn't hold up the next case.
func TestACaseGivenUpDoesNotHoldUpTheNext(t *testing.T) {
	w := withDemo(t)
	w.searchFor("cause:pump-weak stage:closed")
	row, ok := w.pages.row(0)
	if !ok {
		t.Fatal("no case to practise on")
	}
	c, err := w.at.Desk.Store.Get(w.at.Ctx, row.ID)
	if err != nil {
		t.Fatal(err)
	}
	var q queue
	w.at.Start = q.start
	w.enter(practiceRoom)
	w.practiseOn(c, "", nil)
	w.answerPractice("pump-weak", 0.9)
	w.buyEvidence(0)
	if bought := w.trains.session.Bought(); !w.trains.judging || len(bought) != 0 {
		t.Errorf("while the answer is judged %d items are bought", len(bought))
	}
	w.stopPractice()
	w.practiseOn(c, "", nil)
	next := w.trains.session
	w.buyEvidence(0)
	w.answerPractice("pump-weak", 0.9)
	if len(next.Bought()) != 1 || !w.trains.judging {
		t.Fatalf("in the next case %d items are bought, judging %t", len(next.Bought()), w.trains.judging)
	}
	q.next() // the way through the case that was given up
	q.next() // its answer
	if w.trains.session != next || !w.trains.judging {
		t.Error("the case that was given up ends the judging of the next")
	}
	if q.runAll(); w.trains.judging {
		t.Error("all is judged, and the judging goes on")
	}
}
