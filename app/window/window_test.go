package window

import (
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
)

// shown opens a window on a new notebook, in the toolkit's software driver.
func shown(t *testing.T) (*window, string) {
	t.Helper()
	a := test.NewTempApp(t)
	path := filepath.Join(t.TempDir(), "n.db")
	store, err := sqlite.Open(context.Background(), path, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	w, err := newWindow(context.Background(), a, store, func(read func()) { read() })
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { w.at.Desk.Store.Close() })
	w.at.Desk.Mind.Crowds.Draws = 2 // enough to be there
	return w, path
}

// typeAt types at a point of the drawing and leaves its field by Enter.
func typeAt(t *testing.T, w *window, p diagram.Point, text string) {
	t.Helper()
	w.screens.tabs.SelectIndex(hoseMapTab)
	kit.Focus(w.screens.hosemap.Read(w.at.Desk.Round, p))
	field := w.window.Canvas().Focused()
	if field == nil {
		t.Fatalf("no field has the focus for %s", p)
	}
	for _, r := range text {
		field.TypedRune(r)
	}
	field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func (w *window) shownC(p diagram.Point) *diagram.Celsius {
	if r := w.at.Desk.Case.Rounds[w.at.Desk.Round].Reading(p); r != nil {
		return r.ShownC
	}
	return nil
}

func TestWhatIsTypedIsOnTheDiskWhenTheFieldIsLeft(t *testing.T) {
	w, path := shown(t)
	w.menus.opener.begin()
	w.screens.tabs.SelectIndex(hoseMapTab)
	typeAt(t, w, diagram.Housing, "88,5")
	typeAt(t, w, diagram.EngineOut, "41")
	typeAt(t, w, diagram.RadIn, "-")

	other, err := sqlite.Open(context.Background(), path, time.Now) // as after a crash
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	c, err := other.Get(context.Background(), w.at.Desk.Case.ID)
	if err != nil {
		t.Fatal(err)
	}
	r := c.Rounds[0]
	if got := r.Reading(diagram.Housing); got == nil || *got.ShownC != 88.5 {
		t.Errorf("housing on disk = %+v, want 88.5", got)
	}
	if got := r.Reading(diagram.RadIn); got == nil || !got.CantReach() {
		t.Errorf("upper hose, radiator on disk = %+v, want can't reach", got)
	}
	if !strings.HasPrefix(w.frame.head.kept.Text, "kept ") {
		t.Errorf("the sign of keeping says %q", w.frame.head.kept.Text)
	}
}

func TestEnterGoesAlongTheFlow(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.screens.tabs.SelectIndex(hoseMapTab)
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	kit.Focus(w.screens.hosemap.Read(0, l.Points[0].Point))
	for i := range l.Points {
		f := w.window.Canvas().Focused()
		for _, r := range "5" {
			f.TypedRune(r)
		}
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		if got := w.shownC(l.Points[i].Point); got == nil || *got != 5 {
			t.Fatalf("after %d numbers %s shows %v, want 5", i+1, l.Points[i].Point, got)
		}
	}
}

func TestASlipIsMarkedAndNotKept(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "7o")
	typeAt(t, w, diagram.EngineOut, "4000")
	if got := w.shownC(diagram.Housing); got != nil {
		t.Errorf("7o was kept as %v", *got)
	}
	if s := w.at.Desk.Slips(); s[diagram.Housing].Text != "7o" || s[diagram.EngineOut].Text != "4000" {
		t.Errorf("slips = %v, want both texts still there", s)
	}
	typeAt(t, w, diagram.RadIn, "70") // another field's edit leaves the slips in sight
	if len(w.at.Desk.Slips()) != 2 {
		t.Errorf("slips after another entry = %v", w.at.Desk.Slips())
	}
}

func TestUndoAndRedo(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "88")
	w.window.Canvas().Unfocus()
	w.menus.undo()
	if got := w.shownC(diagram.Housing); got != nil {
		t.Errorf("after undo housing shows %v", *got)
	}
	w.menus.opener.redo()
	if got := w.shownC(diagram.Housing); got == nil || *got != 88 {
		t.Errorf("after redo housing shows %v, want 88", got)
	}
}

// Who takes back what was begun, and begins it after all, goes on in the round that came back.
func TestUndoAndRedoTurnToTheirRound(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "88")
	w.screens.hosemap.Begin(cases.Round{Label: "Raised idle", Stage: cases.BeforeRepair})
	w.menus.undo()
	if n := len(w.at.Desk.Case.Rounds); n != 1 || w.at.Desk.Round != 0 {
		t.Fatalf("after undo %d rounds, the shown one %d; want 1 and 0", n, w.at.Desk.Round)
	}
	w.menus.opener.redo()
	if n := len(w.at.Desk.Case.Rounds); n != 2 || w.at.Desk.Round != 1 {
		t.Errorf("after redo %d rounds, the shown one %d; want 2 and 1", n, w.at.Desk.Round)
	}
	typeAt(t, w, diagram.Housing, "85")
	w.window.Canvas().Unfocus()
	w.at.Desk.ShowRound(0)
	w.menus.undo()
	if w.at.Desk.Round != 1 {
		t.Errorf("85 was taken back out of sight: round %d is shown", w.at.Desk.Round)
	}
	w.screens.hosemap.Begin(cases.Round{Label: "Hot idle", Stage: cases.BeforeRepair}) // uses up the empty one
	w.at.Desk.ShowRound(0)
	w.menus.undo()
	if w.at.Desk.Round != 1 || w.at.Desk.Case.Rounds[1].Label != "Raised idle" {
		t.Errorf("after undo round %d of %+v is shown", w.at.Desk.Round, w.at.Desk.Case.Rounds)
	}
}

func TestRoundsAreAddedCopiedDeletedAndBroughtBack(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	rpm := 820.0
	w.at.Desk.Edit("rpm", func(c *cases.Case) { c.Rounds[0].EngineRPM = &rpm })
	typeAt(t, w, diagram.Housing, "88")
	w.screens.hosemap.AddRound("", true)
	if n := len(w.at.Desk.Case.Rounds); n != 2 || w.at.Desk.Round != 1 {
		t.Fatalf("%d rounds, the shown one %d; want 2 and 1", n, w.at.Desk.Round)
	}
	second := w.at.Desk.Case.Rounds[1]
	if second.EngineRPM == nil || *second.EngineRPM != 820 || len(second.Readings) != 0 {
		t.Errorf("the copy = %+v, want the conditions without the readings", second)
	}
	w.screens.hosemap.DeleteRound(0)
	if n := len(w.at.Desk.Case.Rounds); n != 1 {
		t.Fatalf("%d rounds after deleting", n)
	}
	w.menus.undo()
	if got := w.at.Desk.Case.Rounds[0].Reading(diagram.Housing); got == nil || *got.ShownC != 88 {
		t.Errorf("undo brought back %+v", w.at.Desk.Case.Rounds)
	}
}

func TestDeletedCaseComesBack(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	id := w.at.Desk.Case.ID
	w.menus.opener.remove()
	if w.at.Desk.Open || !w.frame.greeting.Content.Visible() {
		t.Error("after deleting the case is still shown")
	}
	w.use(w.at.Desk.Store) // as after a restart: nothing is remembered but what is on disk
	w.menus.opener.restore()
	if !w.at.Desk.Open || w.at.Desk.Case.ID != id {
		t.Errorf("brought back %q, want %q", w.at.Desk.Case.ID, id)
	}
}

func TestFoundAgainByAWord(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Kessel wird nie warm" })
	w.menus.opener.begin()
	page, err := w.at.Desk.Store.Search(context.Background(), cases.Query{Text: "kess"})
	if err != nil || page.Total != 1 || page.Items[0].Title != "Kessel wird nie warm" {
		t.Errorf("Search = %+v, %v", page, err)
	}
}

func TestDemoOpensWithItsCases(t *testing.T) {
	t.Setenv("XDG_DATA_HOME", t.TempDir())
	w, _ := shown(t)
	w.menus.shelf.openDemo()
	page, err := w.at.Desk.Store.Search(context.Background(), cases.Query{})
	if err != nil || page.Total < 8 {
		t.Errorf("the demo notebook holds %d cases, %v; want at least 8", page.Total, err)
	}
	for _, s := range page.Items { // each can be shown
		w.at.Desk.Load(s.ID)
		if !w.at.Desk.Open || w.at.Desk.Case.ID != s.ID {
			t.Errorf("demo case %q does not open", s.Title)
		}
	}
}

// The menu must catch Ctrl Z and Ctrl Y by the toolkit's own names for them.
func TestTheMenuTakesUndoAndRedo(t *testing.T) {
	w, _ := shown(t)
	taken := map[string]bool{}
	for _, m := range w.menus.menu().Items {
		for _, i := range m.Items {
			if i.Shortcut != nil {
				taken[i.Shortcut.ShortcutName()] = true
			}
		}
	}
	for _, want := range []fyne.Shortcut{&fyne.ShortcutUndo{}, &fyne.ShortcutRedo{}} {
		if !taken[want.ShortcutName()] {
			t.Errorf("no menu item takes %s", want.ShortcutName())
		}
	}
}

func TestASecondRoundIsTakenAtItsOwnTime(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "88")
	w.screens.hosemap.AddRound("", true)
	if r := w.at.Desk.Case.Rounds[1]; !r.Taken.IsZero() {
		t.Errorf("the new round says it was taken at %v, before anything was measured", r.Taken)
	}
}

// lifecycle holds what is done as the program comes to the front and goes from there.
type lifecycle struct {
	fyne.Lifecycle
	entered, left func()
}

func (l *lifecycle) SetOnEnteredForeground(do func()) { l.entered = do }
func (l *lifecycle) SetOnExitedForeground(do func())  { l.left = do }

// The notebook is searched anew as one comes back to its window, and not once more as that opens.
func TestTheListIsSearchedAgainOnReturn(t *testing.T) {
	w, path := shown(t)
	var l lifecycle
	w.searchAgainOnReturn(&l)
	other, err := sqlite.Open(context.Background(), path, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	if _, err := other.Put(context.Background(), cases.Case{Title: "brought"}, "test"); err != nil {
		t.Fatal(err)
	}
	total := func() int { _, n := w.list.Shown(); return n }
	if l.entered(); total() != 0 {
		t.Error("as the window opens it is searched twice")
	}
	l.left()
	if l.entered(); total() != 1 {
		t.Errorf("back at the window %d cases are listed, want what was brought", total())
	}
}
