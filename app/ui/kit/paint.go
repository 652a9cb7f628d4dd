package kit

import (
	"image/color"
	"maps"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// painter makes Fyne's objects from a drawing's shapes, at a scale.
type painter struct {
	palette drawing.Palette
	scale   float32
	offset  fyne.Position
}

// paintsAs reports whether both make the same object of a shape.
func (p painter) paintsAs(q painter) bool {
	return p.scale == q.scale && p.offset == q.offset && maps.Equal(p.palette, q.palette)
}

func (p painter) object(s drawing.Shape) fyne.CanvasObject {
	switch s := s.(type) {
	case drawing.Rect:
		r := canvas.NewRectangle(p.color(s.Fill))
		r.CornerRadius = float32(s.Corner) * p.scale
		r.StrokeColor, r.StrokeWidth = p.color(s.Stroke), float32(s.StrokeWidth)*p.scale
		return p.place(r, s.Box)
	case drawing.Disc:
		c := canvas.NewCircle(p.color(s.Fill))
		c.StrokeColor, c.StrokeWidth = p.color(s.Stroke), float32(s.StrokeWidth)*p.scale
		return p.place(c, square(s.Center, s.Radius))
	case drawing.Line:
		l := canvas.NewLine(p.color(s.Stroke))
		l.StrokeWidth = float32(s.Width) * p.scale
		l.Position1, l.Position2 = p.at(s.From), p.at(s.To)
		return l
	case drawing.Band:
		g := canvas.NewHorizontalGradient(p.color(s.Start), p.color(s.End))
		if s.Vertical {
			g = canvas.NewVerticalGradient(p.color(s.Start), p.color(s.End))
		}
		return p.place(g, s.Box)
	case drawing.Wedge:
		// The first corner of Fyne's polygon points up; angles turn clockwise.
		angle := map[drawing.Way]float32{drawing.Up: 0, drawing.Right: 90, drawing.Down: 180, drawing.Left: 270}[s.Toward]
		return p.polygon(3, angle, s.Center, s.Radius, s.Fill, s.Stroke, s.StrokeWidth)
	case drawing.Rhomb:
		return p.polygon(4, 0, s.Center, s.Radius, s.Fill, s.Stroke, s.StrokeWidth)
	case drawing.Label:
		return p.label(s)
	}
	return nil
}

func (p painter) polygon(sides uint, angle float32, center diagram.XY, radius float64, fill, stroke drawing.Ink, width float64) fyne.CanvasObject {
	g := canvas.NewPolygon(sides, p.color(fill))
	g.Angle = angle
	g.StrokeColor, g.StrokeWidth = p.color(stroke), float32(width)*p.scale
	return p.place(g, square(center, radius))
}

// label writes in whole pixels: the toolkit rounds a size up, and what is drawn smaller would
// run into what stands beside it.
func (p painter) label(s drawing.Label) fyne.CanvasObject {
	t := canvas.NewText(s.Text, p.color(s.Ink))
	t.TextSize = float32(math.Floor(s.Size * float64(p.scale)))
	t.TextStyle.Bold = s.Bold
	size := t.MinSize()
	at := p.at(s.At)
	at.Y -= size.Height / 2
	switch s.Align {
	case drawing.Middle:
		at.X -= size.Width / 2
	case drawing.End:
		at.X -= size.Width
	}
	t.Move(at)
	t.Resize(size)
	return t
}

func (p painter) place(o fyne.CanvasObject, b diagram.Box) fyne.CanvasObject {
	o.Move(p.at(diagram.XY{b[0], b[1]}))
	o.Resize(fyne.NewSize(float32(b[2])*p.scale, float32(b[3])*p.scale))
	return o
}

func (p painter) at(xy diagram.XY) fyne.Position {
	return fyne.NewPos(float32(xy[0])*p.scale+p.offset.X, float32(xy[1])*p.scale+p.offset.Y)
}

func (p painter) color(i drawing.Ink) color.Color {
	if i.None() {
		return color.Transparent
	}
	return i.Color(p.palette)
}

func square(center diagram.XY, radius float64) diagram.Box {
	return diagram.Box{center[0] - radius, center[1] - radius, 2 * radius, 2 * radius}
}
