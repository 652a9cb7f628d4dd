package window

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
)

// tabAndEscape moves the focus on a number of times and presses Escape.
func tabAndEscape(c fyne.Canvas, times int) {
	for range times {
		c.FocusNext()
	}
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
}

// Escape closes a dialog wherever the focus is, and then does what it did before.
func TestEscapeClosesADialogWhereverTheFocusIs(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	over := w.window.Canvas().Overlays()
	for what, open := range map[string]func(){"a notice": func() { w.at.Ask.Inform("x") }, "a chart": w.showRounds, "the export": w.chooseShare} {
		for tabs := 1; tabs <= 7; tabs++ {
			open()
			tabAndEscape(w.window.Canvas(), tabs)
			if over.Top() != nil {
				t.Fatalf("%s stays open after %d tabs and Escape", what, tabs)
			}
		}
	}
	w.at.Ask.Inform("below")
	w.at.Ask.Inform("above")
	tabAndEscape(w.window.Canvas(), 1)
	if len(over.List()) != 1 {
		t.Fatalf("%d dialogs after the first Escape, want one", len(over.List()))
	}
	tabAndEscape(w.window.Canvas(), 1)
	if over.Top() != nil {
		t.Error("Escape doesn't close the dialog below")
	}
}

func TestEscapeClosesThePapersWhereverTheFocusIs(t *testing.T) {
	for tabs := 1; tabs <= 10; tabs++ {
		w, _ := shown(t)
		w.newCase()
		p, err := w.openPapers()
		if err != nil {
			t.Fatal(err)
		}
		tabAndEscape(p.window.Canvas(), tabs)
		if slices.Contains(fyne.CurrentApp().Driver().AllWindows(), p.window) {
			t.Errorf("the papers stay open after %d tabs and Escape", tabs)
		}
	}
}

// The name for a file is typed over what is proposed; the first Escape takes it back, the next
// closes the dialog, and Enter keeps the file.
func TestANameForAFileIsTypedTakenBackAndKept(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	w, _ := shown(t)
	w.newCase()
	p, err := w.openPapers()
	if err != nil {
		t.Fatal(err)
	}
	canvas, over := p.window.Canvas(), p.window.Canvas().Overlays()
	key := func(k fyne.KeyName) { canvas.Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	typed := func(text string) {
		for _, r := range text {
			canvas.Focused().TypedRune(r)
		}
	}
	p.save()
	typed("mine")
	key(fyne.KeyEscape)
	if over.Top() == nil {
		t.Fatal("the dialog is gone with what was typed")
	}
	if key(fyne.KeyEscape); over.Top() != nil {
		t.Fatal("Escape doesn't close the dialog")
	}
	for _, name := range []string{"", "mine.pdf"} {
		p.save()
		typed(name)
		key(fyne.KeyReturn)
		if name == "" {
			name = p.fileName()
		}
		if _, err := os.Stat(filepath.Join(home, name)); err != nil || over.Top() != nil {
			t.Errorf("Enter doesn't keep %q: %v, open: %v", name, err, over.Top() != nil)
		}
	}
}
