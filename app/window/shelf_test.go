package window

import (
	"os"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// A notebook whose file was deleted under the window is told of at the next entry, which stays in sight; nobody leaves
// the case without hearing of it, and the notebook can be written where it was.
func TestANotebookThatWasDeletedUnderTheWindow(t *testing.T) {
	w, path := shown(t)
	d, over := w.at.Desk, w.window.Canvas().Overlays()
	dialog := func(want string) fyne.CanvasObject {
		t.Helper()
		if over.Top() == nil {
			t.Fatalf("nothing is said; want %q", want)
		}
		content := over.Top().(*widget.PopUp).Content
		if said := kittest.Texts(content); !strings.Contains(said, want) {
			t.Fatalf("%q isn't in %q", want, said)
		}
		return content
	}
	w.menus.opener.begin()
	first := d.Case.ID
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	d.Edit("title", func(c *cases.Case) { c.Title = "Runs hot" })
	test.Tap(benchtest.ButtonIn(t, dialog("gone from where it was opened"), kit.L("window.frame.close")))
	if h := w.frame.head; h.title.Text != "Runs hot" || h.kept.Text != kit.L("window.frame.unkept") || !h.again.Visible() {
		t.Errorf("the head says %q, %q", h.title.Text, h.kept.Text)
	}
	w.menus.opener.begin()
	test.Tap(benchtest.ButtonIn(t, dialog("title (keeping"), kit.L("window.parting.stay")))
	if d.Case.ID != first {
		t.Fatal("another case is open")
	}
	test.Tap(w.frame.head.again)
	test.Tap(benchtest.ButtonIn(t, dialog(path), kit.L("window.frame.gone-look")))
	test.Tap(benchtest.ButtonIn(t, dialog(path), kit.L("window.frame.gone-write")))
	if over.Top() != nil || d.Case.ID != first || w.frame.head.again.Visible() {
		t.Errorf("written anew, case %q is open and the head says %q", d.Case.ID, w.frame.head.kept.Text)
	}
	if c, err := d.Store.Get(w.at.Ctx, first); err != nil || c.Title != "Runs hot" {
		t.Errorf("the notebook has %q (%v)", c.Title, err)
	}
	if _, err := os.Stat(path); err != nil {
		t.Error(err)
	}
	if said := kittest.Texts(w.list.Content()); !strings.Contains(said, "1 case") {
		t.Errorf("the list says %q", said)
	}
}

// What another window did to the case is kept beside an edit here: nothing failed, and nobody is told that something did.
func TestACaseThatAnotherWindowChangedToo(t *testing.T) {
	w, path := shown(t)
	w.menus.opener.begin()
	d := w.at.Desk
	other, err := sqlite.Open(w.at.Ctx, path, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	theirs := d.Case
	theirs.Title = "theirs"
	if _, err := other.Put(w.at.Ctx, theirs, "title"); err != nil {
		t.Fatal(err)
	}
	d.Edit("lesson", func(c *cases.Case) { c.Lesson = "mine" })
	top := w.window.Canvas().Overlays().Top()
	if top == nil {
		t.Fatal("nothing is said")
	}
	if said := kittest.Texts(top.(*widget.PopUp).Content); !strings.Contains(said, "both kept") || strings.Contains(said, kit.L("window.frame.failed")) {
		t.Errorf("said: %q", said)
	}
}
