package kit_test

import (
	"errors"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// What was hidden for a minute is painted by another renderer, and looks as before.
func TestAnotherRendererPaintsTheSame(t *testing.T) {
	test.NewTempApp(t)
	field := kit.NewField("", nil)
	field.Refuse(errors.New("no"))
	for what, o := range map[string]fyne.Widget{"a sign": kit.Sign("look"), "a meter": kit.NewWeight(0.7, false), "a refused field": field} {
		o.Resize(fyne.NewSize(90, 36))
		first, next := test.WidgetRenderer(o).Objects(), o.CreateRenderer().Objects()
		if len(first) == 0 || len(first) != len(next) {
			t.Fatalf("%s is painted by %d objects, then by %d", what, len(first), len(next))
		}
		for i, a := range first {
			if b := next[i]; a.Size() != b.Size() || a.Position() != b.Position() || a.Visible() != b.Visible() {
				t.Errorf("%s: %T is %v at %v, then %v at %v", what, a, a.Size(), a.Position(), b.Size(), b.Position())
			}
		}
	}
}

// A key may lead to a hose before the loop was ever laid out, and finds it.
func TestAHoseTakesTheFocusBeforeTheFirstLayout(t *testing.T) {
	test.NewTempApp(t)
	loop := kit.NewLoopView()
	loop.Draw(drawing.Picture{Width: 100, Height: 50, Entries: []drawing.Entry{{Point: diagram.RadIn}}}, nil)
	w := test.NewTempWindow(t, &fyne.Container{Objects: []fyne.CanvasObject{container.NewVScroll(&fyne.Container{Objects: []fyne.CanvasObject{loop}})}})
	kit.Focus(loop.Field(diagram.RadIn))
	if got := w.Canvas().Focused(); got == nil || got != loop.Field(diagram.RadIn) {
		t.Errorf("the focus is on %v", got)
	}
}
