package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// tell says what did not work.
func (w *window) tell(err error) { w.ask(w.message(kit.L("window.frame.failed"), err.Error())) }

// inform says why there is nothing to do, where nothing failed.
func (w *window) inform(text string) { w.ask(w.message(kit.L("window.frame.nothing"), text)) }

func (w *window) message(title, text string) dialog.Dialog {
	message := widget.NewLabel(text)
	message.Wrapping = fyne.TextWrapWord
	return w.look(title, kit.L("window.frame.close"), kit.Wide(420, message))
}

// look is a dialog to be looked at and closed. The toolkit's own buttons keep Escape to
// themselves while they have the focus.
func (w *window) look(title, words string, content fyne.CanvasObject) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, content, w.window)
	d.SetButtons([]fyne.CanvasObject{kit.NewButton(words, d.Hide).ByEnter()})
	return d
}

// offer is a dialog that does something, or is left.
func (w *window) offer(title, does, leaves string, content fyne.CanvasObject, do func()) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, content, w.window)
	yes := kit.NewButtonWithIcon(does, theme.ConfirmIcon(), func() {
		d.Hide()
		do()
	}).ByEnter()
	yes.Importance = widget.HighImportance
	d.SetButtons([]fyne.CanvasObject{kit.NewButtonWithIcon(leaves, theme.CancelIcon(), d.Hide).ByEnter(), yes})
	return d
}

// ask shows a dialog that Escape closes too.
func (w *window) ask(d dialog.Dialog) { ask(w.window, d, func() {}) }

// ask shows a dialog over a window. Escape closes it, and then does what it did before; then
// is called when it is closed, however that was.
func ask(over fyne.Window, d dialog.Dialog, then func()) {
	canvas := over.Canvas()
	before := canvas.OnTypedKey()
	canvas.Unfocus()
	canvas.SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			d.Hide()
		}
	})
	d.SetOnClosed(func() {
		canvas.SetOnTypedKey(before)
		then()
	})
	d.Show()
}
