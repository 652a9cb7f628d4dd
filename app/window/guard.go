package window

import (
	"fyne.io/fyne/v2/dialog"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
)

// guard keeps the menu from what can't be done now.
type guard struct {
	at      bench.Bench
	hidden  func() bool   // somebody practises: the notebook has the answer
	missing dialog.Dialog // says that no case is open; nil: it isn't said
}

// unasked does something unless a dialog stands over the window; that no case is open is no
// question.
func (g *guard) unasked(do func()) {
	if g.missing != nil || !g.at.Ask.Asking() {
		do()
	}
}

// seen does what shows the notebook or changes it, but not before who practises on a case: it would show
// the answer, or go unseen.
func (g *guard) seen(do func()) func() {
	return func() {
		if g.hidden() {
			g.at.Ask.Inform(kit.L("window.frame.practising"))
			return
		}
		do()
	}
}

// ofCase does what acts on the open case, and says what is missing where none is open.
func (g *guard) ofCase(do func()) func() {
	return g.seen(func() {
		switch {
		case g.at.Desk.Open:
			do()
		case !g.at.Ask.Asking(): // it may stand there already
			g.missing = g.at.Ask.Notice(kit.L("window.frame.nothing"), kit.L("window.frame.none-open"))
			g.at.Ask.ShowThen(g.missing, func() { g.missing = nil })
		}
	})
}

// opened takes back that no case is open.
func (g *guard) opened() {
	if g.missing != nil {
		g.missing.Hide()
	}
}
