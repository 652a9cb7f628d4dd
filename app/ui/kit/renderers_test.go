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

// The toolkit throws the renderers of what is hidden for a minute away, and looks for the focus in nothing
// that has none: a key that led to the hose map after a log was read put it nowhere.
func TestAHoseTakesTheFocusAfterAMinuteOutOfSight(t *testing.T) {
	loop, w, p := loopView(t)
	w.Canvas().Capture()
	forgetRenderers(t, loop)
	last := loop.Field(p.Entries[len(p.Entries)-1].Point)
	kit.Focus(last)
	if got := w.Canvas().Focused(); got == nil || got != last {
		t.Errorf("the focus is on %v", got)
	}
}

// forgetRenderers does what the toolkit does to what was out of sight for a minute.
func forgetRenderers(t *testing.T, o fyne.CanvasObject) {
	var widgets []fyne.Widget
	var gather func(fyne.CanvasObject)
	gather = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *fyne.Container:
			for _, inner := range o.Objects {
				gather(inner)
			}
		case fyne.Widget:
			widgets = append(widgets, o)
			for _, inner := range test.WidgetRenderer(o).Objects() {
				gather(inner)
			}
		}
	}
	gather(o)
	t.Run("out of sight", func(t *testing.T) { // a test's own renderers go with it
		for _, o := range widgets {
			test.TempWidgetRenderer(t, o)
		}
	})
}
