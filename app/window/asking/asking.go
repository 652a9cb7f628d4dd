// Package asking shows dialogs over a window: notices, questions, files to be chosen, and how far
// something is. Escape closes each of them wherever the focus is.
package asking

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Asker shows dialogs over one window.
type Asker struct {
	over   fyne.Window
	open   []dialog.Dialog      // those that are shown, the last one on top
	before func(*fyne.KeyEvent) // takes the keys while none is
}

// Over asks over that window.
func Over(w fyne.Window) *Asker { return &Asker{over: w} }

// Size is what the window has room for.
func (a *Asker) Size() fyne.Size { return a.over.Canvas().Size() }

// Asking reports whether a dialog waits for an answer.
func (a *Asker) Asking() bool { return a.over.Canvas().Overlays().Top() != nil }

// Tell says what did not work.
func (a *Asker) Tell(err error) {
	a.Show(a.Notice(kit.L("window.frame.failed"), kit.Capital(err.Error())))
}

// Inform says why there is nothing to do, where nothing failed.
func (a *Asker) Inform(text string) { a.Show(a.Notice(kit.L("window.frame.nothing"), text)) }

// Notice is a dialog that says something.
func (a *Asker) Notice(title, text string) dialog.Dialog {
	return a.Look(title, kit.L("window.frame.close"), Words(text))
}

// Words are what a dialog says.
func Words(text string) fyne.CanvasObject {
	message := widget.NewLabel(text)
	message.Wrapping = fyne.TextWrapWord
	return kit.Wide(420, message)
}

// Look is a dialog to be looked at and closed. The toolkit's own buttons keep Escape to
// themselves while they have the focus.
func (a *Asker) Look(title, words string, content fyne.CanvasObject) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, content, a.over)
	d.SetButtons([]fyne.CanvasObject{kit.NewButton(words, d.Hide)})
	return d
}

// Offer is a dialog that does something, or is left.
func (a *Asker) Offer(title, does, leaves string, content fyne.CanvasObject, do func()) *dialog.CustomDialog {
	return a.offer(title, does, leaves, content, func() {}, do)
}

// OfferElse shows an offer, and calls leave once it is left, however that was.
func (a *Asker) OfferElse(title, does, leaves string, content fyne.CanvasObject, do, leave func()) {
	taken := false
	a.ShowThen(a.offer(title, does, leaves, content, func() { taken = true }, do), func() {
		if !taken {
			leave()
		}
	})
}

// offer calls taken before it closes, and do after that.
func (a *Asker) offer(title, does, leaves string, content fyne.CanvasObject, taken, do func()) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, content, a.over)
	yes := kit.NewButtonWithIcon(does, theme.ConfirmIcon(), func() {
		taken()
		d.Hide()
		do()
	})
	yes.Importance = widget.HighImportance
	d.SetButtons([]fyne.CanvasObject{kit.NewButtonWithIcon(leaves, theme.CancelIcon(), d.Hide), yes})
	return d
}

// Choice is one of the answers to a question.
type Choice struct {
	Words string
	Take  func()
}

// Choose is a question with an answer on each of its buttons.
func (a *Asker) Choose(title string, content fyne.CanvasObject, choices ...Choice) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, content, a.over)
	buttons := make([]fyne.CanvasObject, len(choices))
	for i, c := range choices {
		buttons[i] = kit.NewButton(c.Words, func() {
			d.Hide()
			c.Take()
		})
	}
	d.SetButtons(buttons)
	return d
}

// Focused is what has the focus in the window below; nil: nothing has.
func (a *Asker) Focused() fyne.Focusable { return a.over.Canvas().Focused() }

// Show shows a dialog that Escape closes too.
func (a *Asker) Show(d dialog.Dialog) { a.ShowThen(d, func() {}) }

// ShowAt shows a dialog with the caret in one of its fields. That was never painted, and doesn't know its canvas.
func (a *Asker) ShowAt(d dialog.Dialog, f fyne.Focusable) {
	a.Show(d)
	a.over.Canvas().Focus(f)
}

// ShowThen shows a dialog that Escape closes; then is called when it is closed, however that was. Dialogs may be closed in
// any order: one that something is under way for ends by itself, below one that says what failed meanwhile.
func (a *Asker) ShowThen(d dialog.Dialog, then func()) {
	canvas := a.over.Canvas()
	canvas.Unfocus()
	if len(a.open) == 0 {
		a.before = canvas.OnTypedKey()
		canvas.SetOnTypedKey(a.typed)
	}
	a.open = append(a.open, d)
	d.SetOnClosed(func() {
		a.open = slices.DeleteFunc(a.open, func(one dialog.Dialog) bool { return one == d })
		if len(a.open) == 0 {
			canvas.SetOnTypedKey(a.before)
		}
		then()
	})
	d.Show()
}

// typed takes the keys that nothing with the focus wants.
func (a *Asker) typed(e *fyne.KeyEvent) {
	if n := len(a.open); n > 0 && !kit.Page(a.over.Canvas(), e) && e.Name == fyne.KeyEscape {
		a.open[n-1].Hide()
	}
}
