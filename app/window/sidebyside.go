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
	differ, same, err := words.Differences(a, b, w.desk.Units)
	if err != nil {
		w.tell(err)
		return
	}
	w.ask(w.besideDialog(kit.L("window.compare.title"), compare.New(titleOf(a), titleOf(b), differ, same)))
}

// compareWithLast puts the open case beside the one that was open before it.
func (w *window) compareWithLast() {
	if !w.desk.Open || w.before == "" || w.before == w.desk.Case.ID {
		w.inform(kit.L("window.compare.no-other"))
		return
	}
	other, err := w.desk.Store.Get(w.ctx, w.before)
	if err != nil {
		w.tell(err)
		return
	}
	w.showBeside(w.desk.Case, other)
}

func (w *window) besideDialog(title string, content fyne.CanvasObject) dialog.Dialog {
	d := w.look(title, kit.L("window.frame.close"), content)
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(160, 120)))
	return d
}

func titleOf(c cases.Case) string {
	if c.Title == "" {
		return kit.L("window.notebook.no-title")
	}
	return c.Title
}
