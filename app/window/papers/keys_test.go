package papers

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
)

func TestEscapeClosesThePapersWhereverTheFocusIs(t *testing.T) {
	for tabs := 1; tabs <= 10; tabs++ {
		b := begun(t)
		p, err := b.open()
		if err != nil {
			t.Fatal(err)
		}
		benchtest.TabAndEscape(p.window.Canvas(), tabs)
		if slices.Contains(fyne.CurrentApp().Driver().AllWindows(), p.window) {
			t.Errorf("the papers stay open after %d tabs and Escape", tabs)
		}
	}
}

// A shop's name that is typed and not left is there the next time.
func TestTheShopsNameIsKeptWhenThePapersAreClosed(t *testing.T) {
	b := begun(t)
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	canvas := p.window.Canvas()
	for tabs := 0; ; tabs++ {
		if f, ok := canvas.Focused().(*kit.Field); ok && !f.MultiLine {
			break
		}
		if tabs > 20 {
			t.Fatal("no field for the shop's name")
		}
		canvas.FocusNext()
	}
	for _, r := range "Nordhang Garage" {
		canvas.Focused().TypedRune(r)
	}
	p.window.Close()
	if got := b.kept.choice().Name; got != "Nordhang Garage" {
		t.Errorf("the shop's name is kept as %q", got)
	}
}

// The name for a file is typed over what is proposed; the first Escape takes it back, the next
// closes the dialog, and Enter keeps the file.
func TestANameForAFileIsTypedTakenBackAndKept(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	b := begun(t)
	p, err := b.open()
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
