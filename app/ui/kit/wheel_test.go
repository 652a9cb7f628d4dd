package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
)

// The wheel over a field scrolls the screen, unless the field's own text has further to go.
func TestTheWheelOverAFieldScrollsTheScreen(t *testing.T) {
	test.NewTempApp(t)
	line, short, long := kit.NewField("", nil), kit.NewArea("", 2, nil), kit.NewArea("", 2, nil)
	long.SetText("one\ntwo\nthree\nfour\nfive\nsix")
	room := func() fyne.CanvasObject { return kit.Roomy(fyne.NewSize(10, 400), container.NewStack()) }
	outer := container.NewVScroll(container.NewVBox(line, short, long, room()))
	w := test.NewTempWindow(t, outer)
	w.Resize(fyne.NewSize(300, 260))
	over := func(f *kit.Field) fyne.Position {
		return fyne.CurrentApp().Driver().AbsolutePositionForObject(f).AddXY(20, 12)
	}
	for _, f := range []*kit.Field{line, short} {
		outer.ScrollToTop()
		if test.Scroll(w.Canvas(), over(f), 0, -10); outer.Offset.Y != 10 {
			t.Errorf("over a field the screen scrolled to %g, want 10", outer.Offset.Y)
		}
	}
	outer.ScrollToTop()
	if test.Scroll(w.Canvas(), over(long), 0, -10); outer.Offset.Y != 0 {
		t.Errorf("the screen scrolled to %g, want the long text to", outer.Offset.Y)
	}
	for range 30 {
		test.Scroll(w.Canvas(), over(long), 0, -10)
	}
	if outer.Offset.Y == 0 {
		t.Error("with the long text at its end the screen stands still")
	}
}

// So does the wheel over a list, once that has no further to go.
func TestTheWheelOverAListScrollsTheScreen(t *testing.T) {
	test.NewTempApp(t)
	lines := 2
	list := kit.NewList(func() int { return lines }, func() fyne.CanvasObject { return kit.Small("") }, func(int, fyne.CanvasObject) {})
	outer := container.NewVScroll(container.NewVBox(kit.Roomy(fyne.NewSize(10, 100), list), kit.Roomy(fyne.NewSize(10, 400), container.NewStack())))
	w := test.NewTempWindow(t, outer)
	w.Resize(fyne.NewSize(300, 260))
	turn := func() { test.Scroll(w.Canvas(), fyne.NewPos(20, 30), 0, -10) }
	if turn(); outer.Offset.Y != 10 {
		t.Errorf("over a short list the screen scrolled to %g, want 10", outer.Offset.Y)
	}
	outer.ScrollToTop()
	lines = 8
	list.Refresh()
	if turn(); outer.Offset.Y != 0 || list.GetScrollOffset() != 10 {
		t.Errorf("the screen scrolled to %g, the long list to %g; want 0 and 10", outer.Offset.Y, list.GetScrollOffset())
	}
	for range 30 {
		turn()
	}
	if outer.Offset.Y == 0 {
		t.Error("with the long list at its end the screen stands still")
	}
}

// A blank that presses a button is not typed into the field that the button leads to.
func TestABlankThatPressedAButtonIsNotTyped(t *testing.T) {
	test.NewTempApp(t)
	name := kit.NewField("", nil)
	name.SetText("part")
	var w fyne.Window
	add := kit.NewButton("Add", func() { w.Canvas().Focus(name) })
	w = test.NewTempWindow(t, container.NewVBox(add, name))
	w.Canvas().Focus(add)
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	for _, r := range " O r" { // the blank's rune comes behind its key
		w.Canvas().Focused().TypedRune(r)
	}
	if name.Text != "O r" {
		t.Errorf("the field holds %q, want %q", name.Text, "O r")
	}
}
