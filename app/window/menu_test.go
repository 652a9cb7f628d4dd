package window

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit/kittest"
)

// A key that would act on a case says what is missing while none is open, once, rather than
// nothing.
func TestKeysOfACaseSayThatNoneIsOpen(t *testing.T) {
	w, _ := shown(t)
	asked := 0
	for _, m := range w.menu().Items {
		for _, i := range m.Items {
			if m.Label != "Go" && !slices.Contains([]string{"Papers…", "Undo", "Redo", "Paste a photo", "Delete this case", "Cases like this one"}, i.Label) || i.IsSeparator {
				continue
			}
			asked++
			i.Action()
			i.Action()
			over := w.window.Canvas().Overlays()
			if len(over.List()) != 1 {
				t.Fatalf("%s shows %d notices", i.Label, len(over.List()))
			}
			if told := kittest.Texts(over.Top().(*widget.PopUp).Content); !strings.Contains(told, "No case is open") {
				t.Errorf("%s tells %q", i.Label, told)
			}
			over.Top().Hide()
		}
	}
	if asked < 20 {
		t.Errorf("%d keys were asked", asked)
	}
	w.ofCase(w.print)()
	w.newCase()
	if n := len(w.window.Canvas().Overlays().List()); n != 0 {
		t.Errorf("with a case begun %d notices say that none is open", n)
	}
}
