package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
)

// A number is as big as its drawing, and what is pressed, drawn over and typed in it goes to the letters that are seen.
func TestANumberIsWrittenInTheDrawingsScale(t *testing.T) {
	v, w, p := loopView(t)
	fyne.CurrentApp().Settings().SetTheme(kit.NewTheme(kit.Bright))
	for _, scale := range []float32{0.85, 1, 1.6} {
		w.Resize(fyne.NewSize(float32(p.Width)*scale, float32(p.Height)*scale))
		v.Draw(p, map[diagram.Point]kit.Typed{diagram.RadIn: {Rest: "1234", Edit: "1234"}})
		w.Canvas().Capture()
		field := v.Field(diagram.RadIn).(interface {
			fyne.Focusable
			fyne.CanvasObject
			desktop.Mouseable
			fyne.Tappable
			fyne.Draggable
			SelectedText() string
		})
		letters, at, ok := lettersOf(field, fyne.Position{})
		if !ok {
			t.Fatal("no number is painted")
		}
		if want := 18 * scale; letters.TextSize < want-0.01 || letters.TextSize > want+0.01 {
			t.Errorf("at scale %g it is written in %g, want %g", scale, letters.TextSize, want)
		}
		if at.X < 0 || at.Y < 0 || at.Y+letters.Size().Height > field.Size().Height+2 {
			t.Errorf("at scale %g it lies at %v in a field of %v", scale, at, field.Size())
		}
		behind := func(n int) fyne.Position {
			return at.AddXY(fyne.MeasureText("1234"[:n], letters.TextSize, letters.TextStyle).Width+1, letters.Size().Height/2)
		}
		v.Focus(diagram.RadIn)
		field.Tapped(&fyne.PointEvent{}) // marks all; the next press sets the caret
		field.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: behind(3)}, Button: desktop.MouseButtonPrimary})
		field.TypedRune('x')
		if got, _, _ := lettersOf(field, fyne.Position{}); got.Text != "123x4" {
			t.Errorf("at scale %g a letter typed behind the third makes %q", scale, got.Text)
		}
		field.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: behind(2)}, Dragged: fyne.NewDelta(behind(2).X-behind(1).X, 0)})
		if got := field.SelectedText(); got != "2" {
			t.Errorf("at scale %g drawn over the second it marks %q", scale, got)
		}
		field.DragEnd()
		field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
}

// lettersOf is the text that o paints, and where in o.
func lettersOf(o fyne.CanvasObject, at fyne.Position) (*canvas.Text, fyne.Position, bool) {
	switch o := o.(type) {
	case *canvas.Text:
		return o, at, o.Text != ""
	case fyne.Widget:
		for _, inner := range test.WidgetRenderer(o).Objects() {
			if found, at, ok := lettersOf(inner, at.Add(inner.Position())); ok && inner.Visible() {
				return found, at, true
			}
		}
	}
	return nil, at, false
}
