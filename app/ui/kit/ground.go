package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram/drawing"
)

// Ground is a coloured box that follows the light.
type Ground struct {
	widget.BaseWidget
	rect         *canvas.Rectangle
	fill, stroke drawing.Role
}

// NewGround makes a box; an empty stroke paints no edge.
func NewGround(fill, stroke drawing.Role, corner float32) *Ground {
	g := &Ground{rect: canvas.NewRectangle(nil), fill: fill, stroke: stroke}
	g.rect.CornerRadius = corner
	g.ExtendBaseWidget(g)
	return g
}

// Ink changes the colours.
func (g *Ground) Ink(fill, stroke drawing.Role, width float32) {
	g.fill, g.stroke, g.rect.StrokeWidth = fill, stroke, width
	g.Refresh()
}

// CreateRenderer paints the box.
func (g *Ground) CreateRenderer() fyne.WidgetRenderer {
	if g.stroke != "" && g.rect.StrokeWidth == 0 {
		g.rect.StrokeWidth = 1
	}
	g.paint()
	return widget.NewSimpleRenderer(g.rect)
}

// Refresh takes the colours of the light now.
func (g *Ground) Refresh() {
	g.paint()
	g.rect.Refresh()
}

func (g *Ground) paint() {
	p := CurrentPalette()
	g.rect.FillColor = p[g.fill]
	g.rect.StrokeColor = p[g.stroke]
}

// On puts content on a ground, with room around it.
func On(g *Ground, content fyne.CanvasObject) *fyne.Container {
	return container.NewStack(g, container.NewPadded(content))
}
