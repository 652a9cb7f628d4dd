package kit_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
)

// Common graphics chips paint pictures of 4096 dots, and a screen may have two to a unit (common practice, no source).
const widestLine = 2048

// What is pasted into a line is seen, however long it is, and stays one line: painted as one, 2000 letters were a black
// bar.
func TestALineOfTwoThousandLettersIsSeen(t *testing.T) {
	test.NewTempApp(t)
	left := ""
	field, next := kit.NewField("", func(text string) { left = text }), kit.NewField("", nil)
	w := test.NewTempWindow(t, container.NewVBox(field, next))
	w.Resize(fyne.NewSize(300, 300))
	clip := fyne.CurrentApp().Clipboard()
	paste := func(text string) {
		clip.SetContent(text)
		field.TypedShortcut(&fyne.ShortcutPaste{Clipboard: clip})
	}
	w.Canvas().Focus(field)
	long := strings.Repeat("the needle rises ", 118)
	paste(long)
	paste("then\nfalls")
	field.TypedRune('.')
	w.Canvas().Capture()
	want := long + "then falls."
	if field.Text != want {
		t.Errorf("it holds %q", field.Text)
	}
	for _, width := range widths(field) {
		if width > widestLine {
			t.Errorf("%g of it are painted as one", width)
		}
	}
	field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if w.Canvas().Focused() != fyne.Focusable(next) || left != want {
		t.Errorf("Enter leads to %T, and %q was kept", w.Canvas().Focused(), left)
	}
	w.Canvas().Focus(field)
	field.TypedRune('7')
	if field.Text != "7" || field.MultiLine {
		t.Errorf("typed over, it holds %q, of several lines: %v", field.Text, field.MultiLine)
	}
	field.TypedRune('8')
	if field.Text != "78" {
		t.Errorf("it holds %q", field.Text)
	}
}

// widths are those of the texts that o paints.
func widths(o fyne.CanvasObject) (list []float32) {
	switch o := o.(type) {
	case *canvas.Text:
		return []float32{o.MinSize().Width}
	case *fyne.Container:
		for _, inner := range o.Objects {
			list = append(list, widths(inner)...)
		}
	case fyne.Widget:
		for _, inner := range test.WidgetRenderer(o).Objects() {
			list = append(list, widths(inner)...)
		}
	}
	return list
}
