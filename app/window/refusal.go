package window

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
	"loopbook/cases"
)

// newRefusal is the window of a notebook that can't be opened. Whoever began the program from the desktop reads no
// terminal.
func newRefusal(a fyne.App, why error) fyne.Window {
	a.Settings().SetTheme(kit.NewTheme(preferences{a.Preferences()}.light()))
	w := a.NewWindow("Loopbook")
	text := kit.Capital(why.Error())
	if errors.Is(why, cases.ErrForeign) { // the others say themselves what to do
		text = kit.L("window.frame.foreign", text)
	}
	leave := kit.NewButton(kit.L("window.frame.close"), w.Close)
	w.SetContent(container.NewPadded(container.NewVBox(
		kit.Heading(kit.L("window.frame.cant-open")), asking.Words(text), container.NewCenter(leave))))
	w.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			w.Close()
		}
	})
	w.Canvas().Focus(leave)
	return w
}
