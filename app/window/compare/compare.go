// Package compare puts two cases side by side.
package compare

import (
	"fyne.io/fyne/v2"

	view "loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/app/window/words"
	"loopbook/cases"
)

// Show puts two cases side by side over the window.
func Show(at bench.Bench, a, b cases.Case) {
	differ, same, err := words.Differences(a, b, at.Desk.Units)
	if err != nil {
		at.Ask.Tell(err)
		return
	}
	d := at.Ask.Look(kit.L("window.compare.title"), kit.L("window.frame.close"), view.New(words.Title(a), words.Title(b), differ, same))
	d.Resize(at.Ask.Size().Subtract(fyne.NewSize(160, 120)))
	at.Ask.Show(d)
}

// WithOpen puts another case of the notebook beside the open one.
func WithOpen(at bench.Bench, id string) {
	other, err := at.Desk.Store.Get(at.Ctx, id)
	if err != nil {
		at.Ask.Tell(err)
		return
	}
	Show(at, at.Desk.Case, other)
}
