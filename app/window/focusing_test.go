package window

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/diagram"
)

// tabTour is where Tab comes to, from nothing on until it is there again.
func tabTour(w *window) []fyne.Focusable {
	c := w.window.Canvas()
	c.Unfocus()
	var all []fyne.Focusable
	for range 300 {
		c.FocusNext()
		if slices.Contains(all, c.Focused()) {
			return all
		}
		all = append(all, c.Focused())
	}
	return nil
}

// From the last condition of a round Tab enters the hoses, and follows the flow.
func TestTabGoesFromTheConditionsIntoTheHoses(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.screens.tabs.SelectIndex(hoseMapTab)
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	tour := tabTour(w)
	at := slices.Index(tour, w.screens.hosemap.Read(0, l.Points[0].Point))
	last, ok := tour[max(at-1, 0)].(*kit.Field)
	if at < 1 || !ok {
		t.Fatalf("before the first hose Tab is at %T", tour[max(at-1, 0)])
	}
	last.SetText("20")
	if last.Leave(); w.at.Desk.Case.Rounds[0].Gun.ReflectedC == nil {
		t.Error("before the first hose Tab isn't at the last condition, what the hoses reflect")
	}
	for i, p := range l.Points {
		if tour[at+i] != w.screens.hosemap.Read(0, p.Point) {
			t.Errorf("after %d hoses Tab isn't at %s", i, p.Point)
		}
	}
}

// A blank at Undo takes back what was typed last: Tab comes there when it has been
// everywhere on a screen.
func TestTabComesToUndoAfterTheScreen(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	for tab := complaintTab; tab <= alikeTab; tab++ {
		if tab == whatIfTab {
			continue // its car runs until it is left
		}
		w.screens.tabs.SelectIndex(tab)
		w.at.Desk.Edit("title", func(c *cases.Case) { c.Title += "x" }) // which can be taken back
		tour := tabTour(w)
		undo := slices.Index(tour, fyne.Focusable(w.frame.head.undo))
		screen := 0
		for i, f := range tour {
			if kit.Holds(w.screens.tabs, f.(fyne.CanvasObject)) {
				screen++
				if i > undo {
					t.Errorf("on %s Tab comes to a %T after Undo", w.screens.tabs.Items[tab].Text, f)
				}
			}
		}
		if undo < 0 || undo != screen {
			t.Errorf("on %s Undo is the %d. of %d, behind %d of the screen's", w.screens.tabs.Items[tab].Text, undo+1, len(tour), screen)
		}
	}
}

// Whatever is written in a case, its window fits into 1280 by 800.
func TestNoContentWidensTheWindow(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	long := "after the night, before the start, with the heater at full and the bonnet open"
	c := diagram.Celsius(88)
	w.at.Desk.Edit("long", func(k *cases.Case) {
		k.Title, k.Vehicle.Make, k.Verdict.Cause, k.Verdict.ConfirmedBy = long, long, "fan-dead", "fan"
		k.Rounds = nil
		for _, s := range []cases.Stage{cases.BeforeRepair, cases.BeforeRepair, cases.AfterRepair} {
			k.Rounds = append(k.Rounds, cases.Round{Label: long, Stage: s, Readings: []cases.Reading{{Point: diagram.EngineOut, ShownC: &c}}})
		}
		k.Repair.Parts = []cases.Part{{Name: long}}
		k.Rounds[1].Heater = cases.HeaterFull
		k.Codes = []cases.Code{{Code: "P0128", State: long}}
	})
	for tab := complaintTab; tab <= alikeTab; tab++ {
		if tab == whatIfTab {
			continue // its car runs until it is left
		}
		w.screens.tabs.SelectIndex(tab)
		if m := w.window.Content().MinSize(); m.Width > 1280 || m.Height > 800-menuHeight {
			t.Errorf("%s wants %v", w.screens.tabs.Items[tab].Text, m)
		}
	}
}

// menuHeight is what the menu takes of the window, about.
const menuHeight = 28

// In a notebook that may only be read the head says so from the start: it said that all is kept until the first edit failed.
func TestTheHeadTellsThatANotebookIsReadOnly(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("whoever may do all may write a file that is for reading")
	}
	w, path := shown(t)
	w.menus.opener.begin()
	id := w.at.Desk.Case.ID
	if err := errors.Join(w.at.Desk.Store.Close(), os.Chmod(path, 0o444)); err != nil {
		t.Fatal(err)
	}
	store, err := library.Open(w.at.Ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	w.use(store)
	w.at.Desk.Load(id)
	if got, want := w.frame.head.kept.Text, kit.L("window.frame.read-only"); got != want || w.frame.head.kept.Importance != widget.WarningImportance {
		t.Errorf("the head says %q, want %q", got, want)
	}
	w.screens.tabs.SelectIndex(repairTab)
	hours := firstField(t, w)
	hours.SetText("2")
	hours.Leave()
	if got, want := w.frame.head.kept.Text, kit.L("window.frame.unkept"); got != want {
		t.Errorf("after an entry the head says %q, want %q", got, want)
	}
}

// While something is refused nothing says that all is kept, and from another screen the head says where it is.
func TestTheHeadDoesNotSayKeptBesideARefusal(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	said := func(when string, kept bool) {
		t.Helper()
		if got := strings.HasPrefix(w.frame.head.kept.Text, "kept"); got != kept || (w.frame.head.kept.Importance == widget.SuccessImportance) != kept {
			t.Errorf("%s the head says %q", when, w.frame.head.kept.Text)
		}
	}
	w.screens.tabs.SelectIndex(repairTab)
	hours := firstField(t, w)
	hours.SetText("x")
	hours.Leave()
	said("with a refusal", false)
	w.screens.tabs.SelectIndex(complaintTab)
	said("on another screen", false)
	if !strings.HasSuffix(w.frame.head.kept.Text, ": Repair") {
		t.Errorf("on another screen the head says %q", w.frame.head.kept.Text)
	}
	w.screens.tabs.SelectIndex(repairTab)
	said("back at it", false)
	hours.Revert()
	said("with it taken back", true)
	typeAt(t, w, diagram.Housing, "8o")
	said("with a slip at a hose", false)
	typeAt(t, w, diagram.Housing, "80")
	said("with it mended", true)
}

// What is taken back may be of another screen: nothing that could be seen told what the key had done.
func TestTheHeadTellsWhatWasTakenBack(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "80")
	w.menus.ways.turnTo(checksTab)
	w.window.Canvas().Unfocus()
	w.menus.undo()
	if got := w.frame.head.kept.Text; got != "taken back: Thermostat housing 80 °C" {
		t.Errorf("the head says %q", got)
	}
	for when, does := range map[string]func(){"done again": w.menus.opener.redo, "opened anew": func() { w.at.Desk.Load(w.at.Desk.Case.ID) }} {
		w.at.Desk.Undo()
		if does(); !strings.HasPrefix(w.frame.head.kept.Text, "kept") {
			t.Errorf("%s, the head says %q", when, w.frame.head.kept.Text)
		}
	}
	w.at.Desk.Edit(strings.Repeat("a long edit ", 20), func(c *cases.Case) { c.Title = "Runs hot" })
	w.menus.undo()
	if m := w.window.Content().MinSize(); m.Width > 1280 {
		t.Errorf("with %q the window is %g wide", w.frame.head.kept.Text, m.Width)
	}
}

// firstField is the first field of numbers on the screen.
func firstField(t *testing.T, w *window) *kit.Field {
	t.Helper()
	for _, f := range tabTour(w) {
		if f, ok := f.(*kit.Field); ok {
			return f
		}
	}
	t.Fatal("no field on the screen")
	return nil
}

// Escape leads back to the case from the rooms beside it.
func TestEscapeLeadsBackToTheCase(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	for _, room := range []roomName{historyRoom, practiceRoom} {
		for tabs := range 6 {
			w.enter(room)
			w.window.Canvas().Unfocus()
			if tabs == 0 {
				w.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
			} else {
				benchtest.TabAndEscape(w.window.Canvas(), tabs)
			}
			if w.rooms.now != caseRoom {
				t.Errorf("after %d tabs and Escape room %d is still there", tabs, room)
			}
		}
	}
}

// A dialog is answered before the keys do anything.
func TestKeysDoNothingUnderADialog(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.at.Ask.Inform("look")
	for _, m := range w.menus.menu().Items {
		for _, i := range m.Items {
			if i.Action == nil || i.IsQuit {
				continue
			}
			i.Action()
			if over := w.window.Canvas().Overlays().List(); len(over) != 1 || !strings.Contains(kittest.Texts(over[0].(*widget.PopUp).Content), "look") {
				t.Fatalf("%s leaves %d dialogs", i.Label, len(over))
			}
		}
	}
}

// What is typed after a page or a room was left by its key must not land unseen in the field that was left.
func TestALeftPageTakesNoKeys(t *testing.T) {
	w, _ := shown(t)
	way := w.menus.ways
	w.menus.opener.begin()
	for name, leave := range map[string]func(){"a page": func() { way.goTo(verdictTab) }, "the case": func() { w.enter(historyRoom) }} {
		way.goTo(complaintTab)
		title := w.screens.complaint.First()
		kit.Focus(title)
		title.TypedRune('a')
		leave()
		if got := w.window.Canvas().Focused(); got != nil {
			t.Errorf("%s is left, and %T has the focus", name, got)
		}
		if !strings.HasSuffix(w.at.Desk.Case.Title, "a") {
			t.Errorf("%s is left, and the title is %q", name, w.at.Desk.Case.Title)
		}
	}
	w.list.Focus()
	if way.goTo(repairTab); w.window.Canvas().Focused() == nil {
		t.Error("the search lost its focus to another page")
	}
}
