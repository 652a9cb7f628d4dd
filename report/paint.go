package report

import (
	"math"

	"github.com/jung-kurt/gofpdf"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/report/chart"
)

// labelScale makes up for the paper's font, which is wider than the window's
// by about an eighth.
const labelScale = 0.88

// painter puts a drawing's shapes on the paper as vectors.
type painter struct {
	*paper
	left, top, scale float64
}

// draw paints a picture over the page's width, or narrower where it would be
// higher than most.
func (p *paper) draw(d drawing.Picture, most float64) {
	scale := p.drawScale(d, most)
	p.need(d.Height * scale)
	p.paint(margin+(p.inner()-d.Width*scale)/2, p.y, scale, d.Shapes...)
	p.y += d.Height * scale
}

func (p *paper) drawScale(d drawing.Picture, most float64) float64 {
	return min(p.inner()/d.Width, most/d.Height)
}

// paint puts shapes down with their origin at (left, top).
func (p *paper) paint(left, top, scale float64, shapes ...drawing.Shape) {
	to := painter{p, left, top, scale}
	for _, s := range shapes {
		to.shape(s)
	}
}

func (p painter) shape(s drawing.Shape) {
	switch s := s.(type) {
	case drawing.Rect:
		p.rect(s)
	case drawing.Disc:
		if how := p.how(s.Fill, s.Stroke, s.StrokeWidth); how != "" {
			x, y := p.at(s.Center)
			p.pdf.Circle(x, y, s.Radius*p.scale, how)
		}
	case drawing.Line:
		if p.how(drawing.Ink{}, s.Stroke, s.Width) != "" {
			x, y := p.at(s.From)
			toX, toY := p.at(s.To)
			p.pdf.Line(x, y, toX, toY)
		}
	case drawing.Band:
		p.band(s)
	case drawing.Wedge:
		// The corners of a triangle that points to the right lie at 0, 120 and 240°.
		p.polygon(3, float64(s.Toward)*math.Pi/2, s.Center, s.Radius, p.how(s.Fill, s.Stroke, s.StrokeWidth))
	case drawing.Rhomb:
		p.polygon(4, 0, s.Center, s.Radius, p.how(s.Fill, s.Stroke, s.StrokeWidth))
	case drawing.Label:
		p.label(s)
	}
}

func (p painter) at(xy diagram.XY) (x, y float64) {
	return p.left + xy[0]*p.scale, p.top + xy[1]*p.scale
}

func (p painter) box(b diagram.Box) (x, y, w, h float64) {
	x, y = p.at(diagram.XY{b[0], b[1]})
	return x, y, b[2] * p.scale, b[3] * p.scale
}

func (p painter) rect(s drawing.Rect) {
	how := p.how(s.Fill, s.Stroke, s.StrokeWidth)
	x, y, w, h := p.box(s.Box)
	if how == "" || w <= 0 || h <= 0 {
		return
	}
	corner := min(s.Corner*p.scale, w/2, h/2)
	if corner <= 0 {
		p.pdf.Rect(x, y, w, h, how)
		return
	}
	p.pdf.RoundedRect(x, y, w, h, corner, "1234", how)
}

// band fills a box from one colour to the other. In gofpdf's square the origin
// is the left bottom.
func (p painter) band(s drawing.Band) {
	x, y, w, h := p.box(s.Box)
	if w <= 0 || h <= 0 {
		return
	}
	if s.Start == s.End {
		p.fill(s.Start)
		p.pdf.Rect(x, y, w, h, "F")
		return
	}
	a, b := s.Start.Color(p.palette), s.End.Color(p.palette)
	toX, fromY := 1.0, 0.0
	if s.Vertical {
		toX, fromY = 0, 1
	}
	p.pdf.LinearGradient(x, y, w, h, int(a.R), int(a.G), int(a.B), int(b.R), int(b.G), int(b.B), 0, fromY, toX, 0)
}

func (p painter) polygon(corners int, turn float64, center diagram.XY, radius float64, how string) {
	if how == "" {
		return
	}
	x, y := p.at(center)
	points := make([]gofpdf.PointType, corners)
	for i := range points {
		sin, cos := math.Sincos(turn + 2*math.Pi*float64(i)/float64(corners))
		points[i] = gofpdf.PointType{X: x + radius*p.scale*cos, Y: y + radius*p.scale*sin}
	}
	p.pdf.Polygon(points, how)
}

func (p painter) label(s drawing.Label) {
	look := style{size: s.Size * p.scale * labelScale, bold: s.Bold}
	text := p.clean(s.Text, look)
	x, y := p.at(s.At)
	switch w := p.measure(text, look); s.Align {
	case drawing.Middle:
		x -= w / 2
	case drawing.End:
		x -= w
	}
	c := s.Ink.Color(p.palette)
	p.pdf.SetTextColor(int(c.R), int(c.G), int(c.B))
	p.pdf.Text(x, y+look.size*0.36, text)
}

// how sets the colours of a shape and says which of fill and outline it has.
func (p painter) how(fill, stroke drawing.Ink, width float64) string {
	how := ""
	if !fill.None() {
		p.fill(fill)
		how = "F"
	}
	if !stroke.None() && width > 0 {
		p.stroke(stroke, width*p.scale)
		how += "D"
	}
	return how
}

func (p *paper) fill(i drawing.Ink) {
	c := i.Color(p.palette)
	p.pdf.SetFillColor(int(c.R), int(c.G), int(c.B))
}

func (p *paper) stroke(i drawing.Ink, width float64) {
	c := i.Color(p.palette)
	p.pdf.SetDrawColor(int(c.R), int(c.G), int(c.B))
	p.pdf.SetLineWidth(width)
}

// place draws a chart where the paper stands; an error is that it holds nothing.
func (p *paper) place(c chart.Chart, share, height float64) error {
	p.chosen = style{} // a chart has its own
	pen := chart.Pen{Family: family, Clean: func(text string) string { return visual(p.clean(text, bodyStyle)) }}
	err := chart.OnPage(c, p.pdf, pen, diagram.Box{margin, p.y, p.inner() * share, height})
	if err == nil {
		p.y += height
	}
	return err
}
