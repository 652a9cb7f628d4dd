package kit

import (
	"slices"

	"fyne.io/fyne/v2"
)

// laidOver paints a widget of the toolkit's with more over it.
type laidOver struct {
	fyne.WidgetRenderer
	over []fyne.CanvasObject
}

// Objects are the widget's, and what lies over them.
func (r *laidOver) Objects() []fyne.CanvasObject {
	return slices.Concat(r.WidgetRenderer.Objects(), r.over)
}

// Layout gives what lies over the widget all of its room.
func (r *laidOver) Layout(room fyne.Size) {
	r.WidgetRenderer.Layout(room)
	for _, o := range r.over {
		o.Resize(room)
	}
}
