package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
	"loopbook/cases"
)

// showBeside puts two cases side by side.
func (w *window) showBeside(a, b cases.Case) {
	differ, same, err := words.Differences(a, b, w.at.Desk.Units)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.at.Ask.Show(w.besideDialog(kit.L("window.compare.title"), compare.New(titleOf(a), titleOf(b), differ, same)))
}

// compareWithLast puts the open case beside the one that was open before it.
func (w *window) compareWithLast() {
	if !w.at.Desk.Open || w.before == "" || w.before == w.at.Desk.Case.ID {
		w.at.Ask.Inform(kit.L("window.compare.no-other"))
		return
	}
	other, err := w.at.Desk.Store.Get(w.at.Ctx, w.before)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.showBeside(w.at.Desk.Case, other)
}

func (w *window) besideDialog(title string, content fyne.CanvasObject) dialog.Dialog {
	d := w.at.Ask.Look(title, kit.L("window.frame.close"), content)
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(160, 120)))
	return d
}

func titleOf(c cases.Case) string {
	if c.Title == "" {
		return kit.L("window.notebook.no-title")
	}
	return c.Title
}
