package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// fieldRenderer lays two things over the toolkit's entry: a red edge while what stands in it is
// refused, since the toolkit's own wants room for a mark beside it, and what passes the wheel on.
type fieldRenderer struct {
	fyne.WidgetRenderer
	field *Field
	edge  *canvas.Rectangle
	wheel *wheel
}

// refusedEdge is as thick as the map's edge of a slip.
const refusedEdge = 2

// CreateRenderer shows the entry.
func (f *Field) CreateRenderer() fyne.WidgetRenderer {
	r := &fieldRenderer{WidgetRenderer: f.Entry.CreateRenderer(), field: f, edge: canvas.NewRectangle(color.Transparent)}
	r.edge.StrokeWidth = refusedEdge
	r.wheel = newWheel(f, r.scroll())
	f.edge = r.edge
	f.showEdge()
	if room := f.Size(); !room.IsZero() {
		r.Layout(room) // as a picture's
	}
	return r
}

// showEdge has the edge while something is refused.
func (f *Field) showEdge() {
	if f.edge == nil {
		return // never painted yet
	}
	f.edge.StrokeColor, f.edge.CornerRadius = theme.Color(theme.ColorNameError), theme.InputRadiusSize()
	f.edge.Hidden = !f.refused
	f.edge.Refresh()
}

// Objects are the entry's, and over them the edge and the wheel.
func (r *fieldRenderer) Objects() []fyne.CanvasObject {
	list := r.WidgetRenderer.Objects()
	return append(list[:len(list):len(list)], r.edge, r.wheel)
}

// Layout gives what lies over the entry all of its room.
func (r *fieldRenderer) Layout(room fyne.Size) {
	r.WidgetRenderer.Layout(room)
	r.edge.Resize(room)
	r.wheel.Resize(room)
}

// Refresh takes the colour of the light now.
func (r *fieldRenderer) Refresh() {
	r.WidgetRenderer.Refresh()
	r.field.showEdge()
}

// scroll is what the entry scrolls its text in; nil where it has none.
func (r *fieldRenderer) scroll() *container.Scroll {
	for _, o := range r.WidgetRenderer.Objects() {
		if s, ok := o.(*container.Scroll); ok {
			return s
		}
	}
	return nil
}

// wheel takes the turns of the mouse's wheel over a field. The toolkit gives them to the entry
// alone, and the screen around it would stand still.
type wheel struct {
	widget.BaseWidget
	field *Field
	text  *container.Scroll // the field's own; nil: none
}

func newWheel(f *Field, text *container.Scroll) *wheel {
	w := &wheel{field: f, text: text}
	w.ExtendBaseWidget(w)
	return w
}

// CreateRenderer paints nothing.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(color.Transparent))
}

// Scrolled scrolls the field's text; where that has no further to go, what holds the field.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) {
	if w.text != nil && goesOn(w.text, e.Scrolled) {
		w.text.Scrolled(e)
		return
	}
	if c := canvasOf(w.field.self); c != nil {
		for _, root := range append([]fyne.CanvasObject{c.Content()}, c.Overlays().List()...) {
			if pass(root, w.field.self, e) {
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
