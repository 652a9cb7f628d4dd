package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram"
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

// Sign is the mark of a severity: a triangle to act, a diamond to look, a disc
// to note, a ring where all is well.
func Sign(severity string) *Picture {
	c := diagram.XY{9, 9}
	switch severity {
	case "act":
		return NewPicture(18, 18, drawing.Wedge{Center: diagram.XY{9, 10.5}, Radius: 8.5, Toward: drawing.Up, Fill: drawing.In(drawing.ActSign), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1})
	case "look":
		return NewPicture(18, 18, drawing.Rhomb{Center: c, Radius: 8, Fill: drawing.In(drawing.LookSign), Stroke: drawing.In(drawing.LookText), StrokeWidth: 1})
	case "note":
		return NewPicture(18, 18, drawing.Disc{Center: c, Radius: 6.5, Fill: drawing.In(drawing.NoteSign), Stroke: drawing.In(drawing.NoteText), StrokeWidth: 1})
	}
	return NewPicture(18, 18, drawing.Disc{Center: c, Radius: 6, Stroke: drawing.In(drawing.FineText), StrokeWidth: 2.5})
}

// Grounds gives the ground and the edge of a severity's card.
func Grounds(severity string) (fill, edge drawing.Role) {
	switch severity {
	case "act":
		return drawing.ActGround, drawing.ActText
	case "look":
		return drawing.LookGround, drawing.LookText
	case "note":
		return drawing.NoteGround, drawing.NoteText
	}
	return drawing.FineGround, drawing.FineText
}
