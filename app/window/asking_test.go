package window

import (
	"testing"

	"loopbook/app/window/bench/benchtest"
)

// Escape closes a dialog wherever the focus is, and then does what it did before.
func TestEscapeClosesADialogWhereverTheFocusIs(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	over := w.window.Canvas().Overlays()
	for what, open := range map[string]func(){"a notice": func() { w.at.Ask.Inform("x") }, "a chart": w.menus.charts.ShowRounds, "the export": w.menus.share.Choose} {
		for tabs := 1; tabs <= 7; tabs++ {
			open()
			benchtest.TabAndEscape(w.window.Canvas(), tabs)
			if over.Top() != nil {
				t.Fatalf("%s stays open after %d tabs and Escape", what, tabs)
			}
		}
	}
	w.at.Ask.Inform("below")
	w.at.Ask.Inform("above")
	benchtest.TabAndEscape(w.window.Canvas(), 1)
	if len(over.List()) != 1 {
		t.Fatalf("%d dialogs after the first Escape, want one", len(over.List()))
	}
	benchtest.TabAndEscape(w.window.Canvas(), 1)
	if over.Top() != nil {
		t.Error("Escape doesn't close the dialog below")
	}
}
