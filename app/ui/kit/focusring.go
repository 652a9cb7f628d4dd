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
	fyne.WidgetRenderer
	button *Button
	ring   *canvas.Rectangle
}

// CreateRenderer paints the toolkit's button, and the ring over it.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	r := &ringed{b.Button.CreateRenderer(), b, canvas.NewRectangle(nil)}
	r.ring.StrokeWidth = 2
	r.show()
	return r
}

// Objects are the button's, and the ring.
func (r *ringed) Objects() []fyne.CanvasObject {
	all := r.WidgetRenderer.Objects()
	return append(all[:len(all):len(all)], r.ring)
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
