// Package chart draws what is measured over time, temperature or place: with
// gonum/plot, on a page of a PDF as vectors, as a PNG or SVG, or as pixels for a
// window.
//
// A chart is data and words; colours come from a Look. Long series are thinned
// to what a column of pixels can show before they are drawn.
package chart

import (
	"errors"
	"image/color"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// ErrEmpty is wrapped when there is nothing to draw.
var ErrEmpty = errors.New("nothing to draw")

// Chart is what can be drawn on any surface: Lines or a Face.
type Chart interface {
	// Spot is what stands nearest to a place inside the axes, in words; false
	// where nothing does.
	Spot(x, y float64) (string, bool)

	plot(look Look, columns int) (*plot.Plot, error)
}

// Lines is a chart of curves over one axis.
type Lines struct {
	X, Y   string   // what the axes hold, with units
	Names  []string // of the places 0, 1, 2 … along x, where they aren't numbers
	LogY   bool     // a logarithmic scale, for values above 0
	Curves []Curve
	Bands  []Band
	Levels []Level
	Marks  []Mark
}

// Curve is measured points in the order of x, joined; NaN is a gap.
type Curve struct {
	Name string
	X, Y []float64
	Kind Kind
}

// Kind is how a curve is told from the others, without colour too.
type Kind int

// The kinds of curves.
const (
	Main   Kind = iota // a full line
	Second             // dashes
	Dots               // single points
	Third              // dots and dashes
	Fourth             // short dashes
	Fifth              // a thin line
	Sixth              // long dashes
)

// Joined are the kinds of lines that can be told from each other, in their order.
func Joined() []Kind { return []Kind{Main, Second, Third, Fourth, Fifth, Sixth} }

// Band is where a curve would be expected.
type Band struct {
	Name         string
	X, Low, High []float64
}

// Level is a limit, drawn right across with its words.
type Level struct {
	Y    float64
	Name string
}

// Mark is a point with its words, which stand below it or, where a curve or a level
// passes there, above.
type Mark struct {
	X, Y  float64
	Name  string
	Above bool
}

// Look is the colours and sizes of a surface.
type Look struct {
	Ink, Soft, Grid, Paper color.Color
	Main, Second, Band     color.Color
	Size                   vg.Length // of the text
}

// Plain is the look of a printed page.
func Plain() Look {
	return Look{
		Ink: color.Gray{0x20}, Soft: color.Gray{0x56}, Grid: color.Gray{0xd8}, Paper: color.White,
		Main: color.NRGBA{0x00, 0x60, 0x9a, 0xff}, Second: color.NRGBA{0x9c, 0x3c, 0x00, 0xff},
		Band: color.NRGBA{0xe2, 0xed, 0xf3, 0xff}, Size: 9,
	}
}

// plot builds the chart for a width in columns of pixels, or of what is as fine
// on paper.
func (l Lines) plot(look Look, columns int) (*plot.Plot, error) {
	if !l.drawable() {
		return nil, ErrEmpty
	}
	p := plot.New()
	dress(p, look)
	l.placeLegend(p, look)
	p.X.Label.Text, p.Y.Label.Text = l.X, l.Y
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = look.Grid, look.Grid
	p.Add(grid)
	for _, b := range l.Bands {
		if err := addBand(p, look, b); err != nil {
			return nil, err
		}
	}
	for _, c := range l.Curves {
		if err := addCurve(p, look, c, columns); err != nil {
			return nil, err
		}
	}
	for _, v := range l.Levels {
		if err := addLevel(p, look, v, l.markedBelow()); err != nil {
			return nil, err
		}
	}
	for _, m := range l.Marks {
		if l.underLevel(p, m) {
			m.Above = false
		}
		if err := addMark(p, look, m); err != nil {
			return nil, err
		}
	}
	if len(l.Names) > 0 {
		l.nameX(p)
	}
	if l.LogY {
		p.Y.Scale, p.Y.Tick.Marker = plot.LogScale{}, logTicks{}
		if p.Y.Min == p.Y.Max { // by one more or less it might be no logarithm's any more
			p.Y.Min, p.Y.Max = p.Y.Min/2, p.Y.Max*2
		}
		return p, nil
	}
	p.Y.Max += (p.Y.Max - p.Y.Min) * l.headroom()
	return p, nil
}

// headroom is what is left above the curves, as a part of their height: for a
// peak's stroke and its mark, for a mark's words, and for the names of curves from
// place to place, which leave no corner free.
func (l Lines) headroom() float64 {
	const usual, words, each = 1 / 25., 0.2, 0.12
	switch {
	case len(l.Names) > 0:
		return usual + each*float64(len(l.Curves))
	case slices.ContainsFunc(l.Marks, func(m Mark) bool { return m.Above }):
		return usual + words
	}
	return usual
}

// nameX names the places along x, aslant so that long names fit.
func (l Lines) nameX(p *plot.Plot) {
	const aslant = 0.6 // radians
	ticks := make([]plot.Tick, len(l.Names))
	for i, name := range l.Names {
		ticks[i] = plot.Tick{Value: float64(i), Label: name}
	}
	p.X.Tick.Marker = plot.ConstantTicks(ticks)
	p.X.Tick.Label.Rotation, p.X.Tick.Label.XAlign, p.X.Tick.Label.YAlign = aslant, text.XRight, text.YTop
	p.X.Min, p.X.Max = -1, float64(len(l.Names))-0.7 // a slanting name reaches to the left
}

// placeLegend puts the names where curves leave room: below on the right where
// they rise, above it where they fall or go from place to place, above on the left
// where a mark stands below.
func (l Lines) placeLegend(p *plot.Plot, look Look) {
	low := l.markedBelow()
	above := l.falls() || len(l.Names) > 0
	p.Legend.Top, p.Legend.Left = low || above, low && !above
	if p.Legend.Top {
		p.Legend.YOffs = -look.Size
	}
	if p.Legend.Left {
		p.Legend.XOffs, p.Legend.YOffs = look.Size, -2.4*look.Size // under a level at the top
	}
}

// markedBelow reports whether a mark stands where the first curve begins, or lower:
// the curve rises late, to the right, and leaves the room above it free.
func (l Lines) markedBelow() bool {
	first := l.Curves[0].Y
	return len(first) > 0 && slices.ContainsFunc(l.Marks, func(m Mark) bool { return m.Y <= first[0] })
}

// atRight reports whether a mark stands where words beside it would run out of the plot.
func atRight(p *plot.Plot, m Mark) bool { return m.X > p.X.Min+(p.X.Max-p.X.Min)*2/3 }

// underLevel reports whether a mark's words would come upon those of a level over it, which stand at
// the right.
func (l Lines) underLevel(p *plot.Plot, m Mark) bool {
	room := (p.Y.Max - p.Y.Min) * 0.4
	return atRight(p, m) && slices.ContainsFunc(l.Levels, func(v Level) bool { return v.Y > m.Y && v.Y < m.Y+room })
}

// falls reports whether the first curve ends lower than it began: the room for
// words is above it then.
func (l Lines) falls() bool {
	c := l.Curves[0]
	n := min(len(c.X), len(c.Y))
	return n > 1 && c.Y[n-1] < c.Y[0]
}

func (l Lines) drawable() bool {
	for _, c := range l.Curves {
		for i := range c.X {
			if i < len(c.Y) && !math.IsNaN(c.Y[i]) {
				return true
			}
		}
	}
	return false
}

func dress(p *plot.Plot, look Look) {
	p.BackgroundColor = look.Paper
	look.write(&p.Legend.TextStyle)
	p.Legend.Padding, p.Legend.YOffs, p.Legend.XOffs = look.Size/4, look.Size, -look.Size
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.Tick.Marker = shortTicks{}
		a.Color, a.LineStyle.Color, a.Tick.Color = look.Soft, look.Soft, look.Soft
		look.write(&a.Label.TextStyle)
		look.write(&a.Tick.Label)
	}
}

// write sets a style of text to the look's.
func (l Look) write(style *text.Style) {
	style.Color, style.Font.Size, style.Font.Variant = l.Ink, l.Size, "Sans"
}

func addBand(p *plot.Plot, look Look, b Band) error {
	n := min(len(b.X), len(b.Low), len(b.High))
	outline := make(plotter.XYs, 0, 2*n)
	for i := 0; i < n; i++ {
		outline = append(outline, plotter.XY{X: b.X[i], Y: b.Low[i]})
	}
	for i := n - 1; i >= 0; i-- {
		outline = append(outline, plotter.XY{X: b.X[i], Y: b.High[i]})
	}
	area, err := plotter.NewPolygon(outline)
	if err != nil {
		return err
	}
	area.Color, area.LineStyle.Width = look.Band, 0
	p.Add(area)
	p.Legend.Add(b.Name, area)
	return nil
}

func addCurve(p *plot.Plot, look Look, c Curve, columns int) error {
	var thumb plot.Thumbnailer
	for _, piece := range pieces(c.X, c.Y) {
		style := look.line(c.Kind)
		if c.Kind == Dots || len(piece) == 1 { // no line is drawn through one point
			dots, err := plotter.NewScatter(piece)
			if err != nil {
				return err
			}
			dots.GlyphStyle = draw.GlyphStyle{Color: style.Color, Radius: look.Size / 3, Shape: draw.CircleGlyph{}}
			if c.Kind != Dots {
				dots.GlyphStyle.Radius = look.Size / 8
			}
			p.Add(dots)
			if thumb == nil {
				thumb = dots
			}
			continue
		}
		line, err := plotter.NewLine(thin(piece, columns))
		if err != nil {
			return err
		}
		line.LineStyle = style
		p.Add(line)
		thumb = line
	}
	if thumb != nil && c.Name != "" {
		p.Legend.Add(c.Name, thumb)
	}
	return nil
}

// line is a kind's stroke: every other kind is of the second colour.
func (l Look) line(k Kind) draw.LineStyle {
	s := draw.LineStyle{Width: l.Size / 6, Color: l.Main}
	if k == Second || k == Fourth || k == Sixth {
		s.Color = l.Second
	}
	part := l.Size / 6
	switch k {
	case Second:
		s.Dashes = []vg.Length{3 * part, 2 * part}
	case Third:
		s.Dashes = []vg.Length{5 * part, 2 * part, part, 2 * part}
	case Fourth:
		s.Dashes = []vg.Length{part, 1.5 * part}
	case Fifth:
		s.Width = l.Size / 14
	case Sixth:
		s.Dashes = []vg.Length{8 * part, 2 * part}
	}
	return s
}

// addLevel draws a limit right across; its words stand under it at the right, or in
// the middle where a curve rises at the right.
func addLevel(p *plot.Plot, look Look, v Level, middle bool) error {
	line := plotter.NewFunction(func(float64) float64 { return v.Y })
	line.Color, line.Width, line.Dashes = look.Soft, look.Size/9, []vg.Length{look.Size / 5, look.Size / 4}
	at, align, off := p.X.Max, text.XRight, -look.Size/2
	if middle {
		at, align, off = (p.X.Min+p.X.Max)/2, text.XCenter, 0
	}
	words, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{{X: at, Y: v.Y}}, Labels: []string{v.Name}})
	if err != nil {
		return err
	}
	look.write(&words.TextStyle[0])
	words.TextStyle[0].XAlign, words.TextStyle[0].YAlign = align, text.YTop
	words.Offset = vg.Point{X: off, Y: -look.Size / 4}
	p.Add(line, words)
	p.Y.Min, p.Y.Max = min(p.Y.Min, v.Y), max(p.Y.Max, v.Y)
	return nil
}

func addMark(p *plot.Plot, look Look, m Mark) error {
	at := plotter.XYs{{X: m.X, Y: m.Y}}
	ring, err := plotter.NewScatter(at)
	if err != nil {
		return err
	}
	ring.GlyphStyle = draw.GlyphStyle{Color: look.Ink, Radius: look.Size / 2, Shape: draw.RingGlyph{}}
	words, err := plotter.NewLabels(plotter.XYLabels{XYs: at, Labels: []string{m.Name}})
	if err != nil {
		return err
	}
	words.Offset = vg.Point{X: look.Size, Y: -look.Size * 3}
	if m.Above || m.Y < p.Y.Min+(p.Y.Max-p.Y.Min)/4 {
		words.Offset.Y = look.Size
	}
	look.write(&words.TextStyle[0])
	if atRight(p, m) {
		words.TextStyle[0].XAlign = text.XRight
	}
	p.Add(ring, words)
	return nil
}
