package window

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
)

// A row of a warm-up that was chosen is left by Escape in the window too, from any place; what is
// kept or deleted is one step to undo.
func TestARowIsMendedInTheWindow(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.screens.tabs.SelectIndex(warmUpTab)
	c := w.window.Canvas()
	types := func(text string) {
		for _, r := range text {
			c.Focused().TypedRune(r)
		}
	}
	press := func(k fyne.KeyName) { c.Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	kit.Focus(w.screens.warmup.First())
	c.FocusPrevious()
	types("1")
	for _, degrees := range []string{"14", "91", "25"} {
		kit.Focus(w.screens.warmup.First())
		types(degrees)
		press(fyne.KeyReturn)
	}
	var list *kit.List
	for _, o := range test.LaidOutObjects(w.screens.warmup.Content()) {
		if l, ok := o.(*kit.List); ok {
			list = l
		}
	}
	choose := func() {
		kit.Focus(list)
		press(fyne.KeyUp)
		press(fyne.KeyUp)
		press(fyne.KeyDown)
		press(fyne.KeySpace)
	}
	degrees := w.screens.warmup.First().(*kit.Field)
	choose()
	if degrees.Text != "91" {
		t.Fatalf("chosen %q stands in the field, want 91", degrees.Text)
	}
	c.FocusNext()
	if press(fyne.KeyEscape); degrees.Text != "" || w.rooms.now != caseRoom {
		t.Errorf("after Escape %q stands in the field", degrees.Text)
	}
	choose()
	types("19")
	press(fyne.KeyReturn)
	if got := w.at.Desk.Case.Logs[0].EctC; !slices.Equal(got, []float64{14, 19, 25}) {
		t.Errorf("mended: %v", got)
	}
	w.at.Desk.Undo()
	if got := w.at.Desk.Case.Logs[0].EctC; !slices.Equal(got, []float64{14, 91, 25}) {
		t.Errorf("undone: %v", got)
	}
	for range 3 {
		w.at.Desk.Undo()
	}
	if len(w.at.Desk.Case.Logs) != 0 {
		t.Errorf("with every row undone there are logs %+v", w.at.Desk.Case.Logs)
	}
}

// A temperature that is typed and not entered is kept as another page, or another case, is opened,
// or the window closed, and in the case that it was typed in.
func TestATypedWarmUpRowIsKeptOnLeaving(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	first := w.at.Desk.Case.ID
	writes := func(minute, c string) {
		w.screens.tabs.SelectIndex(warmUpTab)
		kit.Focus(w.screens.warmup.First())
		w.window.Canvas().FocusPrevious()
		w.window.Canvas().Focused().(*kit.Field).SetText(minute)
		w.screens.warmup.First().(*kit.Field).SetText(c)
	}
	writes("1", "20")
	w.screens.tabs.SelectIndex(causesTab)
	writes("2", "30")
	w.menus.opener.begin()
	if n := len(w.at.Desk.Case.Logs); n != 0 {
		t.Errorf("the new case has %d logs", n)
	}
	w.menus.opener.open(first)
	writes("3", "40")
	w.leave() // as the window closes
	writes("4", "hot")
	w.menus.opener.begin()
	test.Tap(benchtest.ButtonIn(t, w.window.Canvas().Overlays().Top().(*widget.PopUp).Content, kit.L("window.parting.anyway")))
	c, err := w.at.Desk.Store.Get(w.at.Ctx, first)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Logs) != 1 || !slices.Equal(c.Logs[0].EctC, []float64{20, 30, 40}) || w.at.Desk.Case.ID == first {
		t.Errorf("kept are %+v, and %q is open", c.Logs, w.at.Desk.Case.ID)
	}
}
