package share

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	view "loopbook/app/ui/share"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/anonymous"
)

// withDemo shares from a notebook with the demo's cases, the first of which is open.
func withDemo(t *testing.T) (*Sharing, *benchtest.Made) {
	t.Helper()
	m := benchtest.New(t)
	m.FillDemo(t)
	found := m.Found(t, cases.Query{})
	m.Desk.Load(found[0].ID)
	return New(m.Bench, func() (cases.Query, int) { return cases.Query{}, len(found) }, opening(m)), m
}

// What goes wrong while something is under way is told, unless a person stopped it.
func TestAFailingExportIsTold(t *testing.T) {
	s, m := withDemo(t)
	s.writeTo(view.Wish{}, filepath.Join(t.TempDir(), "no such folder", "x.zip"))
	if says := benchtest.Says(m.Window); !strings.Contains(says, "can't be written") {
		t.Errorf("it says %q", says)
	}
}

// The open case can't be written where none is open, and that is said.
func TestExportingNoCaseIsTold(t *testing.T) {
	m := benchtest.New(t)
	New(m.Bench, func() (cases.Query, int) { return cases.Query{}, 0 }, opening(m)).write(view.Wish{})
	if says := benchtest.Says(m.Window); !strings.Contains(says, kit.L("window.frame.none-open")) {
		t.Errorf("it says %q", says)
	}
}

// What was written is said, with its place: nothing else in the window shows it.
func TestAnExportSaysWhereItLies(t *testing.T) {
	s, m := withDemo(t)
	for want, wish := range map[string]view.Wish{
		"Without the customer, kept as": {Anonymous: true},
		"Kept as":                       {},
	} {
		path := filepath.Join(t.TempDir(), "a.zip")
		s.writeTo(wish, path)
		if says := benchtest.Says(m.Window); !strings.Contains(says, want) || !strings.Contains(says, path) {
			t.Errorf("it says %q", says)
		}
		if _, err := os.Stat(path); err != nil {
			t.Error(err)
		}
	}
}

// The preview is made apart from the window, and only the newest wish is shown.
func TestThePreviewFollowsTheNewestWish(t *testing.T) {
	s, m := withDemo(t)
	m.Desk.Edit("customer", func(c *cases.Case) { c.Customer.Name, c.Lesson = "Dorian Peckwell", "Ask at the green gate." })
	var waiting []func()
	m.Run = func(do func()) { waiting = append(waiting, do) }
	e := view.NewExport([]string{"this", "shown", "all", "table"})
	p := newPreview(s.at, e)
	says := func() (text string) { // in the part that scrolls
		for _, o := range e.Content().(*fyne.Container).Objects {
			if in, ok := o.(*container.Scroll); ok {
				text = kittest.Texts(in.Content)
			}
		}
		return text
	}
	p.show(view.Wish{Anonymous: true, Hide: "green"})
	p.show(view.Wish{Anonymous: true, Hide: "gate"})
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
	p.show(view.Wish{Anonymous: true})
	p.show(view.Wish{})
	for _, do := range waiting {
		do()
	}
	if text := says(); !strings.Contains(text, kit.L("window.share.whole-text")) || strings.Contains(text, "Customer · name") {
		t.Errorf("without Anonymous: %s", text)
	}
}

// Who exports a list after the whole notebook mustn't be led to write over it.
func TestEachScopeProposesAFileOfItsOwn(t *testing.T) {
	seen := map[string]view.Wish{}
	for _, w := range []view.Wish{{Scope: view.This}, {Scope: view.This, Anonymous: true}, {Scope: view.Shown}, {Scope: view.Shown, Anonymous: true}, {Scope: view.All}} {
		name := nameOf(w, "Gauge swings")
		if before, twice := seen[name]; twice || name == "" {
			t.Errorf("%+v is proposed as %q, as %+v is", w, name, before)
		}
		seen[name] = w
	}
}

// What couldn't be written would not leave with the case: that is told before.
func TestACaseDoesNotLeaveWithoutItsLastEdits(t *testing.T) {
	s, m := withDemo(t)
	path := m.Desk.Store.Path()
	if err := os.Rename(path, path+".moved"); err != nil {
		t.Fatal(err)
	}
	m.Desk.Told = func(error) {}
	m.Desk.Edit("title", func(c *cases.Case) { c.Title = "Runs hot" })
	s.write(view.Wish{})
	if says := benchtest.Says(m.Window); !strings.Contains(says, cases.ErrGone.Error()) {
		t.Errorf("it says %q", says)
	}
}

// opening turns to a case at once.
func opening(m *benchtest.Made) func(string, func()) {
	return func(id string, then func()) { m.Desk.Load(id); then() }
}

// Where it is asked first what would be lost by leaving the open case, the copy was told to be open over the question.
func TestATaughtCopyIsToldToBeOpenOnceItIs(t *testing.T) {
	s, m := withDemo(t)
	turn := func() {}
	s.open = func(_ string, then func()) { turn = then }
	s.teach(view.Wish{Anonymous: true})
	if says := benchtest.Says(m.Window); strings.Contains(says, "tag:taught") {
		t.Errorf("while it is asked it says %q", says)
	}
	if turn(); !strings.Contains(benchtest.Says(m.Window), "tag:taught") {
		t.Error("it isn't told that the copy is open")
	}
}

// A taught copy is the case that stands open when it is made, and a second one leads to the first.
func TestATaughtCopyIsOpened(t *testing.T) {
	s, m := withDemo(t)
	whole, listed := m.Desk.Case, 0
	m.Desk.Kept = func() { listed++ }
	s.teach(view.Wish{Anonymous: true})
	made := m.Desk.Case.ID
	if says := benchtest.Says(m.Window); made == whole.ID || listed == 0 || !strings.Contains(says, "tag:taught") {
		t.Errorf("case %s is open, and it says %q", made, says)
	}
	m.Desk.Load(whole.ID)
	s.teach(view.Wish{Anonymous: true})
	if says := benchtest.Says(m.Window); m.Desk.Case.ID != made || !strings.Contains(says, kit.L("window.share.taught-there")) {
		t.Errorf("the second time case %s is open, and it says %q", m.Desk.Case.ID, says)
	}
}
