package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
)

// A check that is typed in its tab is kept, judged and weighed.
func TestACheckIsTypedAndWeighed(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.menus.ways.turnTo(checksTab)
	if w.window.Canvas().Focused() != w.screens.checks.Focus() {
		t.Fatal("the list of checks has no focus")
	}
	w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	for _, text := range []string{"100", "60"} {
		for _, r := range text {
			w.window.Canvas().Focused().TypedRune(r)
		}
		w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	if c := w.at.Desk.Case.Tests; len(c) != 1 || c[0].Kind != "pressure-hold" || *c[0].EndKPa != 60 || c[0].Stage != cases.BeforeRepair {
		t.Fatalf("tests = %+v", c)
	}
	found := false
	for _, f := range w.at.Desk.Found.Flags {
		found = found || f.ID == "pressure-drop"
	}
	w.screens.causes.Show()
	if basis := kittest.Texts(w.screens.causes.Content()); !found || !strings.Contains(basis, "1 test") {
		t.Errorf("flags %+v, basis %q", w.at.Desk.Found.Flags, basis)
	}
	w.menus.ways.checkAgain()
	w.menus.ways.deleteCheck() // of what isn't begun
	if len(w.at.Desk.Case.Tests) != 1 {
		t.Errorf("left: %+v", w.at.Desk.Case.Tests)
	}
	w.menus.undo()
	w.menus.undo()
	if len(w.at.Desk.Case.Tests) != 0 {
		t.Errorf("after two steps back: %+v", w.at.Desk.Case.Tests)
	}
}

// Whoever goes to a check from the tabs is warned as the advice warns: an engine that was too hot is
// run for some (stop at the red zone: M15, published).
func TestFormsMindAnEngineThatWasTooHot(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	const warning = "This engine got too hot"
	told := func(what string, o fyne.CanvasObject, want bool) {
		t.Helper()
		if got := strings.Contains(kittest.Texts(o), warning); got != want {
			t.Errorf("%s warns: %v, want %v", what, got, want)
		}
	}
	all := func(want bool) {
		t.Helper()
		w.menus.ways.goTo(checksTab)
		for kind, runs := range map[cases.TestKind]bool{"combustion-gas": true, "hose-look": true, "level": false, "pressure-hold": false} {
			w.screens.checks.Begin(kind)
			told(string(kind), w.screens.checks.Content(), want && runs)
		}
		w.menus.ways.goTo(warmUpTab)
		told("the warm-up", w.screens.warmup.Content(), want)
	}
	all(false)
	red := diagram.Celsius(118)
	w.at.Desk.Edit("a reading", func(c *cases.Case) { c.Rounds[0].EctC = &red })
	all(true)
	w.menus.ways.begin(likelihood.RaisedIdle, "")
	told("the round that is begun", w.screens.hosemap.Content(), true)
}

// An advised reading of the codes begins where a code is written.
func TestReadingTheCodesBeginsAtTheCodes(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.menus.ways.begin(likelihood.ReadCodes, "")
	if w.screens.tabs.SelectedIndex() != complaintTab || w.window.Canvas().Focused() != w.screens.complaint.NewCode() {
		t.Errorf("tab %d, the caret in %T", w.screens.tabs.SelectedIndex(), w.window.Canvas().Focused())
	}
}
