package benchtest

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Says are the words of the dialog on top of a window; "": there is none.
func Says(w fyne.Window) string {
	top := w.Canvas().Overlays().Top()
	if top == nil {
		return ""
	}
	var words []string
	for _, o := range test.LaidOutObjects(top) {
		if l, ok := o.(*widget.Label); ok {
			words = append(words, l.Text)
		}
	}
	return strings.Join(words, "\n")
}

// Button finds a button by its words in the dialog on top of a window.
func Button(t testing.TB, w fyne.Window, words string) fyne.Tappable {
	t.Helper()
	if top := w.Canvas().Overlays().Top(); top != nil {
		return ButtonIn(t, top, words)
	}
	t.Fatalf("no dialog has a button that says %q", words)
	return nil
}

// ButtonIn finds a button by its words in a part of a window.
func ButtonIn(t testing.TB, in fyne.CanvasObject, words string) fyne.Tappable {
	t.Helper()
	for _, o := range test.LaidOutObjects(in) {
		if b, ok := o.(*kit.Button); ok && b.Text == words {
			return b
		}
	}
	t.Fatalf("no button says %q", words)
	return nil
}
