package chart

import (
	"image"
	"image/color"
	"math"

	"github.com/jung-kurt/gofpdf"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"loopbook/diagram"
)

// Pen writes a chart's words on a page: Family is one of the document's fonts,
// and Clean makes a text one that this can write, since names in a chart are typed
// by people.
type Pen struct {
	Family string
	Clean  func(string) string
}

// OnPage draws a chart into a box of a page as vectors, in the plain look. The
// document's unit is the point.
func OnPage(l Chart, pdf *gofpdf.Fpdf, pen Pen, box diagram.Box) error {
	x, y, width, height := box[0], box[1], box[2], box[3]
	p, err := l.plot(Plain(), int(width)*2)
	if err != nil {
		return err
	}
	c := &page{pdf: pdf, pen: pen, states: []state{{to: matrix{1, 0, 0, -1, x, y + height}, width: 1, ink: color.Black}}}
	p.Draw(draw.NewCanvas(c, vg.Length(width), vg.Length(height)))
	pdf.SetDashPattern(nil, 0)
	return pdf.Error()
}

// page is a vg.Canvas on a box of a PDF page; the canvas counts upwards from
// the box's lower left corner.
type page struct {
	pdf    *gofpdf.Fpdf
	pen    Pen
	states []state
}

type state struct {
	to    matrix
	width float64
	dash  []float64
	phase float64
	ink   color.Color
}

// matrix takes canvas points to the page: x' = a·x + c·y + e, y' = b·x + d·y + f.
type matrix struct{ a, b, c, d, e, f float64 }

func (m matrix) at(p vg.Point) (x, y float64) {
	return m.a*float64(p.X) + m.c*float64(p.Y) + m.e, m.b*float64(p.X) + m.d*float64(p.Y) + m.f
}

// after is m with n done first.
func (m matrix) after(n matrix) matrix {
	return matrix{
		m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b, m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d,
		m.a*n.e + m.c*n.f + m.e, m.b*n.e + m.d*n.f + m.f,
	}
}

func (c *page) now() *state { return &c.states[len(c.states)-1] }

func (c *page) SetLineWidth(w vg.Length) { c.now().width = float64(w) }

func (c *page) SetLineDash(pattern []vg.Length, offset vg.Length) {
	c.now().dash, c.now().phase = nil, float64(offset)
	for _, d := range pattern {
		c.now().dash = append(c.now().dash, float64(d))
	}
}

func (c *page) SetColor(ink color.Color) {
	if ink == nil {
		ink = color.Black
	}
	c.now().ink = ink
}

func (c *page) Rotate(rad float64) {
	sin, cos := math.Sincos(rad)
	c.now().to = c.now().to.after(matrix{cos, sin, -sin, cos, 0, 0})
}

func (c *page) Translate(p vg.Point) {
	c.now().to = c.now().to.after(matrix{1, 0, 0, 1, float64(p.X), float64(p.Y)})
}

func (c *page) Scale(x, y float64) { c.now().to = c.now().to.after(matrix{x, 0, 0, y, 0, 0}) }

func (c *page) Push() { c.states = append(c.states, *c.now()) }
func (c *page) Pop()  { c.states = c.states[:len(c.states)-1] }

func (c *page) Stroke(path vg.Path) {
	s := c.now()
	if s.width <= 0 {
		return
	}
	r, g, b := rgb(s.ink)
	c.pdf.SetDrawColor(r, g, b)
	c.pdf.SetLineWidth(s.width)
	c.pdf.SetDashPattern(s.dash, s.phase)
	c.trace(path)
	c.pdf.DrawPath("D")
}

func (c *page) Fill(path vg.Path) {
	r, g, b := rgb(c.now().ink)
	c.pdf.SetFillColor(r, g, b)
	c.trace(path)
	c.pdf.DrawPath("F")
}

func (c *page) trace(path vg.Path) {
	to := c.now().to
	for _, part := range path {
		x, y := to.at(part.Pos)
		switch part.Type {
		case vg.MoveComp:
			c.pdf.MoveTo(x, y)
		case vg.LineComp:
			c.pdf.LineTo(x, y)
		case vg.CurveComp:
			c.curve(part, x, y)
		case vg.ArcComp:
			c.arc(part)
		case vg.CloseComp:
			c.pdf.ClosePath()
		}
	}
}

func (c *page) curve(part vg.PathComp, x, y float64) {
	to := c.now().to
	x1, y1 := to.at(part.Control[0])
	if len(part.Control) == 1 {
		c.pdf.CurveTo(x1, y1, x, y)
		return
	}
	x2, y2 := to.at(part.Control[1])
	c.pdf.CurveBezierCubicTo(x1, y1, x2, y2, x, y)
}

// arc goes by chords of a few degrees: marks are small.
func (c *page) arc(part vg.PathComp) {
	const step = math.Pi / 24
	n := int(math.Ceil(math.Abs(part.Angle) / step))
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos(part.Start + part.Angle*float64(i)/float64(max(n, 1)))
		x, y := c.now().to.at(vg.Point{X: part.Pos.X + part.Radius*vg.Length(cos), Y: part.Pos.Y + part.Radius*vg.Length(sin)})
		c.pdf.LineTo(x, y)
	}
}

// narrower makes up for the page's font being wider than the one that the chart
// is laid out with.
const narrower = 0.9

func (c *page) FillString(f font.Face, at vg.Point, text string) {
	if f.Font.Size == 0 {
		return
	}
	s := c.now()
	x, y := s.to.at(at)
	r, g, b := rgb(s.ink)
	c.pdf.SetTextColor(r, g, b)
	text = c.pen.Clean(text)
	c.setFont(f, text)
	turn := math.Atan2(-s.to.b, s.to.a) * 180 / math.Pi
	if math.Abs(turn) < 1e-6 {
		c.pdf.Text(x, y, text)
		return
	}
	c.pdf.TransformBegin()
	c.pdf.TransformRotate(turn, x, y)
	c.pdf.Text(x, y, text)
	c.pdf.TransformEnd()
}

// setFont is as small as the text's room asks for: a legend's names end at their
// signs, and the more letters a name has, the further narrower is off.
func (c *page) setFont(f font.Face, text string) {
	size := float64(f.Font.Size) * narrower
	c.pdf.SetFont(c.pen.Family, "", size)
	if room, wide := float64(f.Width(text)), c.pdf.GetStringWidth(text); wide > room {
		c.pdf.SetFontSize(size * room / wide)
	}
}

// DrawImage draws nothing: no chart here holds pictures.
func (c *page) DrawImage(vg.Rectangle, image.Image) {}

func rgb(ink color.Color) (r, g, b int) {
	n := color.NRGBAModel.Convert(ink).(color.NRGBA)
	return int(n.R), int(n.G), int(n.B)
}
