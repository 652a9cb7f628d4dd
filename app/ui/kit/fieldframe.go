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
	laidOver
	field *Field
}

// refusedEdge is as thick as the map's edge of a slip.
const refusedEdge = 2

// CreateRenderer shows the entry.
func (f *Field) CreateRenderer() fyne.WidgetRenderer {
	f.fold()
	entry := f.Entry.CreateRenderer()
	f.edge = canvas.NewRectangle(color.Transparent)
	f.edge.StrokeWidth = refusedEdge
	f.showEdge()
	wheel := newWheel(func() fyne.CanvasObject { return f.self }, scrollOf(entry))
	r := &fieldRenderer{laidOver{entry, []fyne.CanvasObject{f.edge, wheel}}, f}
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

// Refresh takes the colour of the light now, and the rows of a text that is too long for one.
func (r *fieldRenderer) Refresh() {
	folded := r.field.fold()
	r.WidgetRenderer.Refresh()
	if folded && r.field.focused {
		r.field.toEnd() // the toolkit has the caret behind the first row
	}
	r.field.showEdge()
}
