package kit_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Whatever the width, no line ends between a number and its unit; nothing else changes, and a wider room joins the lines
// again.
func TestANumberKeepsItsUnit(t *testing.T) {
	test.NewTempApp(t)
	const told = "freeze frame: 116 °C, 1900 rpm, 52 km/h; the hottest so far is 86 °C in the round, 41 K under it, by 8 % more."
	text := kit.Paragraphs(kit.Span{Text: told})
	w := test.NewTempWindow(t, text)
	seen := func() string { return text.Segments[0].(*widget.TextSegment).Text }
	ends := 0
	for width := float32(700); width > 120; width -= 7 {
		w.Resize(fyne.NewSize(width, 400))
		if got := strings.ReplaceAll(seen(), "\n", ""); got != told {
			t.Fatalf("at %g it says %q", width, got)
		}
		ends += strings.Count(seen(), "\n")
		for _, line := range drawn(text) {
			if last := strings.TrimSpace(line); last != "" && strings.ContainsRune("0123456789", rune(last[len(last)-1])) {
				t.Errorf("at %g a line ends with a number: %q", width, line)
			}
		}
	}
	kit.SetParagraphs(text, kit.Span{Text: "now"}) // told anew in the room that it has
	w.Resize(fyne.NewSize(323, 400))
	kit.SetParagraphs(text, kit.Span{Text: told})
	for _, line := range drawn(text) {
		if last := strings.TrimSpace(line); last != "" && strings.ContainsRune("0123456789", rune(last[len(last)-1])) {
			t.Errorf("told anew, a line ends with a number: %q", line)
		}
	}
	if text.String() != told {
		t.Errorf("it is told to say %q", text.String())
	}
	if ends == 0 {
		t.Error("no line was ended anywhere")
	}
	w.Resize(fyne.NewSize(1600, 400))
	if seen() != told {
		t.Errorf("with all the room it says %q", seen())
	}
}

// drawn are the lines as the toolkit breaks them.
func drawn(o fyne.CanvasObject) (out []string) {
	switch o := o.(type) {
	case *canvas.Text:
		return []string{o.Text}
	case *fyne.Container:
		for _, child := range o.Objects {
			out = append(out, drawn(child)...)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			out = append(out, drawn(child)...)
		}
	}
	return out
}
