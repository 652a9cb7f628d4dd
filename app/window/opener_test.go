package window

import (
	"path/filepath"
	"testing"

	"loopbook/app/library"
	"loopbook/cases"
)

// The case that the open one is put beside is the one that was open last, however this one was
// opened, and is of the same notebook.
func TestTheCaseBeforeIsTheOneThatWasOpenLast(t *testing.T) {
	w, _ := shown(t)
	o, d := w.menus.opener, w.at.Desk
	begin := func(title string) string { // a blank one would be begun once
		o.begin()
		d.Edit("title", func(c *cases.Case) { c.Title = title })
		return d.Case.ID
	}
	first, second := begin("first"), begin("second")
	o.open(first)
	if o.begin(); d.Before != first {
		t.Errorf("a case is begun and the one before is %s, want %s", d.Before, first)
	}
	o.remove()
	o.open(second)
	if o.restore(); d.Before != second {
		t.Errorf("a case is restored and the one before is %s, want %s", d.Before, second)
	}
	restored := d.Case.ID
	if d.Load(first); d.Before != restored { // as what is taken in opens it
		t.Errorf("a case came in and the one before is %s, want %s", d.Before, restored)
	}
	store, err := library.Open(w.at.Ctx, filepath.Join(t.TempDir(), "other.db"))
	if err != nil {
		t.Fatal(err)
	}
	if w.use(store); d.Before != "" {
		t.Errorf("in another notebook the one before is %s", d.Before)
	}
}
