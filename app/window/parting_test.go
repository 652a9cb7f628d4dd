package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/diagram"
)

// What was typed and could not be kept is told before the case is left: it was gone without a word, though
// it may have been typed only a moment before.
func TestWhatWasRefusedIsToldBeforeItIsGone(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	first := w.at.Desk.Case.ID
	w.menus.ways.turnTo(warmUpTab)
	coolant := w.window.Canvas().Focused()
	coolant.TypedRune('8')
	coolant.TypedRune('a')
	typeAt(t, w, diagram.Housing, "7o")
	over := w.window.Canvas().Overlays()
	asked := func() fyne.CanvasObject {
		w.menus.opener.begin()
		if over.Top() == nil || w.at.Desk.Case.ID != first {
			t.Fatal("another case was begun over what was refused")
		}
		return over.Top().(*widget.PopUp).Content
	}
	content := asked()
	said := kittest.Texts(content)
	for _, want := range []string{"Coolant, °C: 8a", "Thermostat housing: 7o"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q isn't told in %q", want, said)
		}
	}
	test.Tap(benchtest.ButtonIn(t, content, kit.L("window.parting.stay")))
	if over.Top() != nil || w.at.Desk.Case.ID != first || len(w.at.Desk.Slips()) != 1 {
		t.Errorf("gone back, case %s is open with slips %v", w.at.Desk.Case.ID, w.at.Desk.Slips())
	}
	test.Tap(benchtest.ButtonIn(t, asked(), kit.L("window.parting.anyway")))
	if over.Top() != nil || w.at.Desk.Case.ID == first {
		t.Error("no other case was begun")
	}
	w.menus.opener.open(first)
	if over.Top() != nil || w.at.Desk.Case.ID != first {
		t.Error("it is asked where nothing was refused")
	}
}

// A slip stays with its round: who turns to another one and back finds it, and it is told of from there too.
func TestASlipStaysWithItsRound(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	d := w.at.Desk
	typeAt(t, w, diagram.RadIn, "8o")
	w.menus.ways.addRound()
	if d.Round != 1 || len(d.Slips()) != 0 {
		t.Fatalf("round %d begins with slips %v", d.Round, d.Slips())
	}
	if lost := w.screens.lost(); len(lost) != 1 || !strings.Contains(lost[0], "8o") {
		t.Errorf("from another round %q is told", lost)
	}
	if d.ShowRound(0); d.Slips()[diagram.RadIn].Text != "8o" {
		t.Errorf("back in its round the slips are %v", d.Slips())
	}
	d.Edit("rounds", func(c *cases.Case) { c.Rounds = c.Rounds[1:] })
	if lost := w.screens.lost(); len(lost) > 0 {
		t.Errorf("with the round gone %q is told", lost)
	}
}
