package chart

import (
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
)

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
	Name   string
	X, Y   []float64
	Kind   Kind
	Dotted bool // each point is seen on the line
}

// Kind is how a curve is told from the others, without colour too.
type Kind int

// The kinds of curves.
const (
	Main   Kind = iota // a full line
	Second             // dashes
	Dots               // single points
	third              // dots and dashes
	fourth             // short dashes
	fifth              // a thin line
	sixth              // long dashes
)

// InSecond reports whether a kind is of the look's second colour: every other one is.
func (k Kind) InSecond() bool { return k == Second || k == fourth || k == sixth }

// Joined are the kinds of lines that can be told from each other, in their order.
func Joined() []Kind { return []Kind{Main, Second, third, fourth, fifth, sixth} }

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
	if err := l.addAll(p, look, columns); err != nil {
		return nil, err
	}
	if len(l.Names) > 0 {
		nameX(p, l.Names, true)
		p.X.Min, p.X.Max = -1, float64(len(l.Names))-0.7 // a slanting name reaches to the left
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

// addAll adds what is drawn, from the back to the front.
func (l Lines) addAll(p *plot.Plot, look Look, columns int) error {
	for _, b := range l.Bands {
		if err := addBand(p, look, b); err != nil {
			return err
		}
	}
	for _, c := range l.Curves {
		if err := addCurve(p, look, c, columns); err != nil {
			return err
		}
	}
	for _, v := range l.Levels {
		if err := addLevel(p, look, v, l.markedBelow()); err != nil {
			return err
		}
	}
	for _, m := range l.Marks {
		if l.underLevel(p, m) {
			m.Above = false
		}
		if err := addMark(p, look, m); err != nil {
			return err
		}
	}
	return nil
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
