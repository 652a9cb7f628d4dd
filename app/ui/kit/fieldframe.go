package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
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
	f.fold()
	r := &fieldRenderer{WidgetRenderer: f.Entry.CreateRenderer(), field: f, edge: canvas.NewRectangle(color.Transparent)}
	r.edge.StrokeWidth = refusedEdge
	r.wheel = newWheel(func() fyne.CanvasObject { return f.self }, scrollOf(r.WidgetRenderer))
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

// Refresh takes the colour of the light now, and the rows of a text that is too long for one.
func (r *fieldRenderer) Refresh() {
	folded := r.field.fold()
	r.WidgetRenderer.Refresh()
	if folded && r.field.focused {
		r.field.toEnd() // the toolkit has the caret behind the first row
	}
	r.field.showEdge()
}
