package window

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// A key that would act on a case says what is missing while none is open, once, rather than
// nothing.
func TestKeysOfACaseSayThatNoneIsOpen(t *testing.T) {
	w, _ := shown(t)
	asked := 0
	for _, m := range w.menus.menu().Items {
		for _, i := range m.Items {
			if m.Label != "Go" && !slices.Contains([]string{"Papers…", "Undo", "Redo", "Paste a photo", "Delete this case", "Cases like this one"}, i.Label) || i.IsSeparator {
				continue
			}
			asked++
			i.Action()
			i.Action()
			over := w.window.Canvas().Overlays()
			if len(over.List()) != 1 {
				t.Fatalf("%s shows %d notices", i.Label, len(over.List()))
			}
			if told := kittest.Texts(over.Top().(*widget.PopUp).Content); !strings.Contains(told, "No case is open") {
				t.Errorf("%s tells %q", i.Label, told)
			}
			over.Top().Hide()
		}
	}
	if asked < 20 {
		t.Errorf("%d keys were asked", asked)
	}
	w.menus.guard.ofCase(w.menus.papers.Print)()
	w.menus.opener.begin()
	if n := len(w.window.Canvas().Overlays().List()); n != 0 {
		t.Errorf("with a case begun %d notices say that none is open", n)
	}
}

// A case that was just made, as of a simulated car, stays when a step is taken back, and how it goes is told, once.
func TestNothingToUndoIsTold(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.add(cases.Case{Title: "Simulated car", Loop: cases.Loop{Layout: "outlet-thermostat"}}, "simulated car")
	id, over := w.at.Desk.Case.ID, w.window.Canvas().Overlays()
	w.menus.undo()
	w.menus.undo()
	if n := len(over.List()); n != 1 || w.at.Desk.Case.ID != id {
		t.Fatalf("%d notices stand over case %q, want one over %q", n, w.at.Desk.Case.ID, id)
	}
	if told := kittest.Texts(over.Top().(*widget.PopUp).Content); !strings.Contains(told, kit.L("window.frame.delete-case")) {
		t.Errorf("%q is told", told)
	}
}

// A case that was deleted is told of, and undoing brings it back, with the rest of what can be undone.
func TestADeletedCaseIsUndone(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin() // another one, which mustn't take its place
	w.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Stays" })
	w.menus.opener.begin()
	w.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Runs hot" })
	id := w.at.Desk.Case.ID
	w.menus.opener.remove()
	if told := kittest.Texts(w.frame.greeting.Content); w.at.Desk.Open || !strings.Contains(told, "“Runs hot” is deleted. Ctrl Z brings it back.") {
		t.Errorf("deleted, %q is told", told)
	}
	w.menus.undo()
	if !w.at.Desk.Open || w.at.Desk.Case.ID != id {
		t.Fatalf("undone, case %q is open", w.at.Desk.Case.ID)
	}
	w.menus.undo()
	if got := w.at.Desk.Case.Title; got != "" {
		t.Errorf("undone again, the title is %q", got)
	}
	w.menus.opener.remove()
	w.use(w.at.Desk.Store)
	if told := kittest.Texts(w.frame.greeting.Content); strings.Contains(told, "Ctrl Z") {
		t.Errorf("in a notebook just opened %q is told", told)
	}
}

// pressed does what the menu has for a key with Control and Shift.
func pressed(t *testing.T, w *window, k fyne.KeyName) {
	t.Helper()
	name := (&desktop.CustomShortcut{KeyName: k, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}).ShortcutName()
	for _, m := range w.window.MainMenu().Items {
		for _, i := range m.Items {
			if i.Shortcut != nil && i.Shortcut.ShortcutName() == name {
				i.Action()
				return
			}
		}
	}
	t.Fatalf("%s does nothing", name)
}

// A key for each of what the units and the light can be goes round it, without a case too.
func TestKeysGoRoundUnitsAndLight(t *testing.T) {
	w, _ := shown(t)
	w.window.SetMainMenu(w.menus.menu())
	light := func() string { return string(w.menus.choices.kept.light()) }
	for _, tt := range []struct {
		key  fyne.KeyName
		now  func() string
		want []string
	}{
		{fyne.KeyT, func() string { return string(w.at.Desk.Units.Temperature) }, []string{string(units.F), string(units.C)}},
		{fyne.KeyP, func() string { return string(w.menus.choices.kept.units().Pressure) }, []string{string(units.PSI), string(units.Bar), string(units.KPa)}},
		{fyne.KeyD, func() string { return string(w.at.Desk.Units.Distance) }, []string{string(units.Miles), string(units.Km)}},
		{fyne.KeyL, light, []string{string(kit.Bright), string(kit.Dim), string(kit.System)}},
	} {
		for _, want := range tt.want {
			if pressed(t, w, tt.key); tt.now() != want {
				t.Errorf("%s leads to %s, want %s", tt.key, tt.now(), want)
			}
		}
	}
}

// No key stands in the menu twice, whatever is chosen.
func TestNoKeyStandsTwiceInTheMenu(t *testing.T) {
	w, _ := shown(t)
	for range 3 {
		w.window.SetMainMenu(w.menus.menu())
		seen := map[string]string{}
		for _, m := range w.window.MainMenu().Items {
			for _, i := range m.Items {
				if i.Shortcut == nil {
					continue
				}
				if at := fmt.Sprint(m.Label, ", ", i.Label); seen[i.Shortcut.ShortcutName()] != "" {
					t.Errorf("%s is of %s and of %s", i.Shortcut.ShortcutName(), seen[i.Shortcut.ShortcutName()], at)
				} else {
					seen[i.Shortcut.ShortcutName()] = at
				}
			}
		}
		for _, k := range []fyne.KeyName{fyne.KeyT, fyne.KeyP, fyne.KeyD, fyne.KeyL} {
			pressed(t, w, k)
		}
	}
}
