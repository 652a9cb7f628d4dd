package kit_test

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// A wrapped line that comes has the room of all its lines at once, over what stands below it.
func TestALineThatComesMakesRoom(t *testing.T) {
	test.NewTempApp(t)
	line, below := widget.NewLabel(strings.Repeat("what is not so ", 8)), widget.NewLabel("below")
	line.Wrapping = fyne.TextWrapWord
	line.Hide()
	box := container.NewVBox(line, below)
	w := test.NewTempWindow(t, box)
	w.Resize(fyne.NewSize(220, 400))
	for range 2 {
		kit.Reveal(line, true, box.Size().Width)
		box.Refresh()
		if one := below.MinSize().Height; !line.Visible() || line.Size().Height < 2*one || below.Position().Y < line.Position().Y+line.Size().Height {
			t.Errorf("the line is %g high, one of one line %g; what is below stands at %g", line.Size().Height, one, below.Position().Y)
		}
		kit.Reveal(line, false, box.Size().Width)
		box.Refresh()
		if line.Visible() || below.Position().Y != 0 {
			t.Errorf("the line is gone, and what is below stands at %g", below.Position().Y)
		}
		line.SetText(line.Text + line.Text)
	}
}

// A key of another program's or a person's name may begin with any letter: its first byte alone is none.
func TestCapital(t *testing.T) {
	for text, want := range map[string]string{"": "", "hose": "Hose", "überdruck": "Überdruck", "Ölkühler": "Ölkühler", "ñu": "Ñu", "pH": "pH", "km/h is": "km/h is", "log.csv: is empty": "log.csv: is empty", "full.": "Full.", "x": "X"} {
		if got := kit.Capital(text); got != want {
			t.Errorf("Capital(%q) = %q, want %q", text, got, want)
		}
	}
}

// A name that somebody pasted a page into is cut at once: letter by letter five thousand took nine seconds.
func TestCut(t *testing.T) {
	test.NewTempApp(t)
	if got := kit.Cut("short", 300); got != "short" {
		t.Errorf("cut to %q", got)
	}
	began, words := time.Now(), strings.Repeat("wörter und ", 450)
	got := kit.Cut(words, 300)
	if took := time.Since(began); took > time.Second {
		t.Errorf("took %v", took)
	}
	left := strings.TrimSuffix(got, "…")
	if !strings.HasPrefix(words, left) || kit.BoldWidth(got) > 300 || kit.BoldWidth(words[:len(left)+3]+"…") <= 300 {
		t.Errorf("cut to %q, %g wide", got, kit.BoldWidth(got))
	}
}
