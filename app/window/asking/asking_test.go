package asking

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// What ends by itself below a notice left that deaf to Escape, and when the notice was closed the window's own keys were
// gone for good: Escape and the page keys did nothing any more.
func TestDialogsCloseInAnyOrder(t *testing.T) {
	w := test.NewTempApp(t).NewWindow("test")
	w.SetContent(widget.NewLabel(""))
	own := 0
	w.Canvas().SetOnTypedKey(func(*fyne.KeyEvent) { own++ })
	a := Over(w)
	escape := func() { w.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape}) }
	below, above := a.Notice("below", ""), a.Notice("above", "")
	a.Show(below)
	a.Show(above)
	below.Hide()
	if escape(); a.Asking() || own != 0 {
		t.Error("Escape doesn't close what is left")
	}
	if escape(); own != 1 {
		t.Error("the window's own keys are gone")
	}
}
