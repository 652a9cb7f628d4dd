package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
)

// What has the focus in a dialog is pressed by Enter and by a space, and Escape is heard
// wherever the focus is.
func TestADialogsKeys(t *testing.T) {
	test.NewTempApp(t)
	pressed, closed := 0, 0
	b := kit.NewButton("Take", func() { pressed++ }, func() { closed++ })
	c := kit.NewCheck("All", func() { closed++ })
	w := test.NewTempWindow(t, container.NewVBox(b, c))
	for _, key := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyEscape, fyne.KeyLeft} {
		w.Canvas().Focus(b)
		w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
	}
	w.Canvas().Focus(c)
	w.Canvas().Focused().TypedRune(' ')
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if pressed != 3 || closed != 2 || !c.Checked {
		t.Errorf("pressed %d times, closed %d times, ticked %v; want 3, 2, true", pressed, closed, c.Checked)
	}
}
