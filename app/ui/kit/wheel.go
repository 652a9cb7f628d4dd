package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// wheel takes the turns of the mouse's wheel over a field or a list. The toolkit gives them to that
// alone, and the screen around it would stand still.
type wheel struct {
	widget.BaseWidget
	over func() fyne.CanvasObject // a field learns only later what embeds it
	own  *container.Scroll        // nil: none
}

func newWheel(over func() fyne.CanvasObject, own *container.Scroll) *wheel {
	w := &wheel{over: over, own: own}
	w.ExtendBaseWidget(w)
	return w
}

// CreateRenderer paints nothing.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(color.Transparent))
}

// Scrolled scrolls what lies under the wheel; where that has no further to go, what holds it.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) {
	if w.own != nil && goesOn(w.own, e.Scrolled) {
		w.own.Scrolled(e)
		return
	}
	over := w.over()
	if c := canvasOf(over); c != nil {
		for _, root := range append([]fyne.CanvasObject{c.Content()}, c.Overlays().List()...) {
			if pass(root, over, e) {
				return
			}
		}
	}
}

// pass gives a turn of the wheel to the innermost that scrolls between root and o; false where
// root doesn't hold o, or nothing scrolls there.
func pass(root, o fyne.CanvasObject, e *fyne.ScrollEvent) bool {
	for _, inner := range inside(root) {
		if !Holds(inner, o) {
			continue
		}
		if pass(inner, o, e) {
			return true
		}
		if s, ok := root.(*container.Scroll); ok && goesOn(s, e.Scrolled) {
			s.Scrolled(e)
			return true
		}
	}
	return false
}

// goesOn reports whether what scrolls has anything left that way.
func goesOn(s *container.Scroll, by fyne.Delta) bool {
	if s.Content == nil {
		return false
	}
	rest := s.Content.Size().Subtract(s.Size())
	along := func(by, at, rest float32) bool { return by > 0 && at > 0 || by < 0 && at < rest }
	return along(by.DY, s.Offset.Y, rest.Height) || along(by.DX, s.Offset.X, rest.Width)
}

// scrollOf is what a widget scrolls its own in; nil where it has none.
func scrollOf(r fyne.WidgetRenderer) *container.Scroll {
	for _, o := range r.Objects() {
		if s, ok := o.(*container.Scroll); ok {
			return s
		}
	}
	return nil
}
