package window

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/query"
)

// withDemo is a window on a notebook with the demo's cases.
func withDemo(t *testing.T) *window {
	t.Helper()
	w, _ := shown(t)
	if err := library.FillDemo(w.at.Ctx, w.at.Desk.Store); err != nil {
		t.Fatal(err)
	}
	w.use(w.at.Desk.Store)
	return w
}

// Who comes to practise types their name: it went nowhere, and the first Tab led back to the case.
func TestTheNameIsTypedWherePracticeIsEntered(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.enter(practiceRoom)
	if f, ok := w.window.Canvas().Focused().(*kit.Field); !ok || !kit.Holds(w.practice.Content(), f) {
		t.Errorf("%T has the focus", w.window.Canvas().Focused())
	}
}

// From the history a page's key leads to it.
func TestAPagesKeyLeadsThereFromTheHistory(t *testing.T) {
	w := withDemo(t)
	w.enter(historyRoom)
	w.menus.ways.goTo(proofTab)
	if w.rooms.now != caseRoom || w.screens.tabs.SelectedIndex() != proofTab {
		t.Errorf("from the history a page's key leads to room %v, page %d", w.rooms.now, w.screens.tabs.SelectedIndex())
	}
}

// What is begun from the history is seen at once, with the focus in it: a case and a round were made
// behind the history's back.
func TestWhatIsBegunFromTheHistoryIsSeen(t *testing.T) {
	w := withDemo(t)
	for _, tt := range []struct {
		begin string
		do    func()
		tab   int
	}{
		{"a case", w.menus.opener.begin, complaintTab},
		{"a round", w.menus.ways.addRound, hoseMapTab},
		{"a check", w.menus.ways.checkAgain, checksTab},
	} {
		w.enter(historyRoom)
		if tt.do(); w.rooms.now != caseRoom || w.screens.tabs.SelectedIndex() != tt.tab {
			t.Errorf("%s begun from the history leads to room %v, page %d", tt.begin, w.rooms.now, w.screens.tabs.SelectedIndex())
		}
		if w.window.Canvas().Focused() == nil {
			t.Errorf("%s begun from the history has no focus", tt.begin)
		}
	}
}

// What is taken back from the history is seen, as is a case that is restored.
func TestWhatIsUndoneFromTheHistoryIsSeen(t *testing.T) {
	w := withDemo(t)
	o := w.menus.opener
	o.begin()
	w.at.Desk.Edit("title", func(c *cases.Case) { c.Complaint.Text = "hot" })
	for name, do := range map[string]func(){"undo": o.undo, "redo": o.redo} {
		w.enter(historyRoom)
		if do(); w.rooms.now != caseRoom {
			t.Errorf("%s from the history leads to room %v", name, w.rooms.now)
		}
	}
	o.remove()
	w.enter(historyRoom)
	if o.restore(); w.rooms.now != caseRoom || !w.at.Desk.Open {
		t.Errorf("restored from the history leads to room %v", w.rooms.now)
	}
}

// What the program held likeliest is kept when a verdict is given.
func TestAVerdictKeepsTheGuess(t *testing.T) {
	w := withDemo(t)
	page, err := w.at.Desk.Store.Search(w.at.Ctx, query.Parse("stage:open", time.Local).Query)
	if err != nil || len(page.Items) == 0 {
		t.Fatal("the demo has no open case", err)
	}
	s := page.Items[0]
	w.menus.opener.open(s.ID)
	w.at.Desk.Edit("verdict", func(c *cases.Case) { c.Verdict.Cause = "cap-weak" })
	d, err := w.at.Desk.Store.Digest(w.at.Ctx, s.ID)
	if err != nil || d.Guess.First == "" || d.Guess.FirstP <= 0 {
		t.Errorf("guess %+v, %v", d.Guess, err)
	}
}

// How many cases a class set would have follows the search that a trainer looks for them by.
func TestAClassSetIsOfTheCasesThatTheListShows(t *testing.T) {
	w := withDemo(t)
	w.enter(practiceRoom)
	test.Tap(benchtest.ButtonIn(t, w.practice.Content(), kit.L("window.practice.to-trainer")))
	for _, search := range []string{"", "cause:pump-weak", "stage:open"} {
		q := query.Parse("stage:closed "+search, time.Local).Query
		page, err := w.at.Desk.Store.Search(w.at.Ctx, q)
		if err != nil {
			t.Fatal(err)
		}
		w.list.Search(search)
		b := benchtest.ButtonIn(t, w.practice.Content(), kit.L("window.practice.make", page.Total))
		if off := b.(fyne.Disableable).Disabled(); off != (page.Total == 0) {
			t.Errorf("with %q searched for, a set of %d can be made: %v", search, page.Total, !off)
		}
	}
}

// A practice that isn't over isn't gone by a key: another notebook, or the same one again, is turned to only once
// it is agreed to what is lost.
func TestAPracticeIsNotGoneWithoutAWord(t *testing.T) {
	t.Setenv("XDG_DATA_HOME", t.TempDir())
	w := withDemo(t)
	w.enter(practiceRoom)
	over, room := w.window.Canvas().Overlays(), w.practice.Content()
	test.Tap(benchtest.ButtonIn(t, room, kit.L("window.practice.this-case")))
	test.Tap(benchtest.ButtonIn(t, room, kit.L("window.practice.item", kit.L("window.practice.dash"), kit.L("window.practice.min", 0.5))))
	w.menus.shelf.openDemo()
	if over.Top() == nil || !w.practice.Practises() {
		t.Fatal("the demo notebook was opened over a practice that is under way")
	}
	test.Tap(benchtest.ButtonIn(t, over.Top().(*widget.PopUp).Content, kit.L("window.parting.keep-on")))
	if over.Top() != nil || !w.practice.Practises() || w.rooms.now != practiceRoom {
		t.Errorf("who goes on practising is in room %v, practising: %v", w.rooms.now, w.practice.Practises())
	}
	w.menus.shelf.openDemo()
	test.Tap(benchtest.ButtonIn(t, over.Top().(*widget.PopUp).Content, kit.L("window.parting.anyway")))
	if over.Top() != nil || w.practice.Practises() {
		t.Error("the demo notebook isn't opened though what is lost was agreed to")
	}
}

// The list of cases, which tells what each turned out to be, is hidden from who practises; a trainer sees it,
// and no key shows the answer.
func TestTheListIsHiddenFromWhoPractises(t *testing.T) {
	w := withDemo(t)
	page, err := w.at.Desk.Store.Search(w.at.Ctx, query.Parse("cause:pump-weak stage:closed", time.Local).Query)
	if err != nil || len(page.Items) == 0 {
		t.Fatal("no case to practise on", err)
	}
	w.menus.opener.open(page.Items[0].ID)
	w.enter(practiceRoom)
	if w.rail.Visible() {
		t.Error("the list is in sight before a case is begun")
	}
	test.Tap(benchtest.ButtonIn(t, w.practice.Content(), kit.L("window.practice.to-trainer")))
	if !w.rail.Visible() {
		t.Error("a trainer has no list to choose from")
	}
	test.Tap(benchtest.ButtonIn(t, w.practice.Content(), kit.L("window.practice.from-trainer")))
	test.Tap(benchtest.ButtonIn(t, w.practice.Content(), kit.L("window.practice.this-case")))
	if w.rail.Visible() {
		t.Error("the list is in sight during practice")
	}
	told, logs := w.at.Desk.Case.Complaint.Text, len(w.at.Desk.Case.Logs)
	w.menus.opener.undo()
	w.menus.opener.remove()
	if !w.at.Desk.Open || w.at.Desk.Case.Complaint.Text != told {
		t.Error("a key takes what was done back unseen by who practises")
	}
	over := w.window.Canvas().Overlays()
	for _, m := range w.menus.menu().Items {
		for _, i := range m.Items {
			for _, name := range []string{"window.alike.title", "window.compare.menu", "window.frame.print", "window.frame.export", "window.plot.rounds", "window.frame.delete-check", "window.frame.find", "window.frame.new-case", "window.history.menu", "window.frame.import", "window.share.folder"} {
				if i.Label != kit.L(name) {
					continue
				}
				if i.Action(); over.Top() == nil || !strings.Contains(kittest.Texts(over.Top().(*widget.PopUp).Content), kit.L("window.frame.practising")) {
					t.Errorf("%s doesn't say that somebody practises", i.Label)
					continue
				}
				over.Top().Hide()
			}
		}
	}
	w.menus.dropped([]fyne.URI{storage.NewFileURI("../../testdata/logs/cold_drive_full.csv")})
	if over.Top() == nil || w.rooms.now != practiceRoom || len(w.at.Desk.Case.Logs) != logs {
		t.Errorf("a log that is dropped goes into the case that is practised on: %d, then %d", logs, len(w.at.Desk.Case.Logs))
	} else {
		over.Top().Hide()
	}
	if w.typed(&fyne.KeyEvent{Name: fyne.KeyEscape}); w.rooms.now != practiceRoom {
		t.Error("Escape shows the answer to who practises")
	}
	if w.menus.ways.goTo(verdictTab); w.rooms.now != practiceRoom {
		t.Error("a key shows the answer to who practises")
	}
	open, rounds := w.at.Desk.Case.ID, len(w.at.Desk.Case.Rounds)
	w.menus.ways.addRound()
	w.menus.ways.checkAgain()
	if w.menus.opener.begin(); w.at.Desk.Case.ID != open || len(w.at.Desk.Case.Rounds) != rounds || w.rooms.now != practiceRoom {
		t.Error("a key changes the notebook unseen behind who practises")
	}
	w.enter(historyRoom)
	if w.menus.opener.begin(); w.at.Desk.Case.ID == open || w.rooms.now != caseRoom {
		t.Error("who left the practice for the history can't begin a case there")
	}
}
