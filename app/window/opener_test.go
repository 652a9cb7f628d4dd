package window

import (
	"path/filepath"
	"testing"

	"loopbook/app/library"
)

// The case that the open one is put beside is the one that was open last, however this one was
// opened, and is of the same notebook.
func TestTheCaseBeforeIsTheOneThatWasOpenLast(t *testing.T) {
	w, _ := shown(t)
	o, d := w.menus.opener, w.at.Desk
	o.begin()
	first := d.Case.ID
	o.begin()
	second := d.Case.ID
	o.open(first)
	if o.begin(); o.before != first {
		t.Errorf("a case is begun and the one before is %s, want %s", o.before, first)
	}
	o.remove()
	o.open(second)
	if o.restore(); o.before != second {
		t.Errorf("a case is restored and the one before is %s, want %s", o.before, second)
	}
	store, err := library.Open(w.at.Ctx, filepath.Join(t.TempDir(), "other.db"))
	if err != nil {
		t.Fatal(err)
	}
	if w.use(store); o.before != "" {
		t.Errorf("in another notebook the one before is %s", o.before)
	}
}
