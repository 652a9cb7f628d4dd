package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// ringed paints a button with a ring in it while it has the focus: the toolkit only blends the
// focus into the ground, which on a strong colour nobody sees (WCAG 2.2, 2.4.7).
type ringed struct {
	laidOver
	button *Button
	ring   *canvas.Rectangle
}

// CreateRenderer paints the toolkit's button, and the ring over it.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	ring := canvas.NewRectangle(nil)
	ring.StrokeWidth = 2
	r := &ringed{laidOver{b.Button.CreateRenderer(), []fyne.CanvasObject{ring}}, b, ring}
	r.show()
	return r
}

// Layout puts the ring a little inside the button's edge.
func (r *ringed) Layout(room fyne.Size) {
	r.WidgetRenderer.Layout(room)
	const inset = 3
	r.ring.Move(fyne.NewPos(inset, inset))
	r.ring.Resize(room.SubtractWidthHeight(2*inset, 2*inset))
}

// Refresh follows the focus and the light.
func (r *ringed) Refresh() {
	r.WidgetRenderer.Refresh()
	r.show()
}

func (r *ringed) show() {
	r.ring.Hidden = !r.button.focused || r.button.Importance != widget.HighImportance
	r.ring.StrokeColor = theme.Color(theme.ColorNameForegroundOnPrimary)
	r.ring.CornerRadius = theme.Size(theme.SizeNameInputRadius) / 2
	r.ring.Refresh()
}
