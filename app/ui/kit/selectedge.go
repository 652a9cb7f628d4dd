package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// edged paints a list to choose from with the edge that a field has: the toolkit gives it only a ground, which on a
// light paper nobody sees (WCAG 2.2, 1.4.11), and shows the focus by another one.
type edged struct {
	laidOver
	list *Select
	edge *canvas.Rectangle
}

// CreateRenderer paints the toolkit's list, and the edge over it.
func (s *Select) CreateRenderer() fyne.WidgetRenderer {
	edge := canvas.NewRectangle(nil)
	r := &edged{laidOver{s.Select.CreateRenderer(), []fyne.CanvasObject{edge}}, s, edge}
	r.show()
	return r
}

// Layout puts the edge where a field has it.
func (r *edged) Layout(room fyne.Size) {
	r.WidgetRenderer.Layout(room)
	border := theme.Size(theme.SizeNameInputBorder)
	r.edge.Move(fyne.NewSquareOffsetPos(border / 2))
	r.edge.Resize(room.SubtractWidthHeight(border+.5, border+.5))
}

// Refresh follows the focus and the light.
func (r *edged) Refresh() {
	r.WidgetRenderer.Refresh()
	r.show()
}

func (r *edged) show() {
	colour := theme.ColorNameInputBorder
	if r.list.focused {
		colour = theme.ColorNamePrimary
		if ground, ok := r.WidgetRenderer.Objects()[0].(*canvas.Rectangle); ok {
			ground.FillColor = theme.Color(theme.ColorNameInputBackground)
			ground.Refresh()
		}
	}
	r.edge.Hidden = r.list.Disabled()
	r.edge.StrokeColor, r.edge.StrokeWidth = theme.Color(colour), theme.Size(theme.SizeNameInputBorder)
	r.edge.CornerRadius = theme.Size(theme.SizeNameInputRadius)
	r.edge.Refresh()
}
