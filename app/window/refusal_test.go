package window

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
)

// Why a notebook can't be opened is said in a window: from the desktop it was a program that didn't start.
func TestANotebookThatCantBeOpenedIsToldInAWindow(t *testing.T) {
	w := newRefusal(test.NewTempApp(t), fmt.Errorf("notebook /shop/n.db: %w", cases.ErrNewer))
	w.Resize(w.Content().MinSize())
	for _, want := range []string{"can't be opened", "/shop/n.db", cases.ErrNewer.Error()} {
		if said := kittest.Texts(w.Content()); !strings.Contains(said, want) {
			t.Errorf("%q isn't in %q", want, said)
		}
	}
	if size := w.Content().MinSize(); size.Width < 300 || size.Height < 100 {
		t.Errorf("it is %v", size)
	}
}

// A file that is no notebook stands in the way at every start: what to do about it is said, and that it wasn't touched.
func TestWhatToDoAboutAFileThatIsNoNotebook(t *testing.T) {
	for why, told := range map[error]bool{cases.ErrForeign: true, cases.ErrDamaged: false, cases.ErrNewer: false} {
		w := newRefusal(test.NewTempApp(t), fmt.Errorf("notebook /shop/n.db: %w", why))
		w.Resize(w.Content().MinSize())
		if said := kittest.Texts(w.Content()); strings.Contains(said, "good copy") != told {
			t.Errorf("%v: %q", why, said)
		}
	}
}
