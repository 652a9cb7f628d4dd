package chart

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

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
		if c.Kind == Dots || c.Dotted || len(piece) == 1 { // no line is drawn through one point
			dots, err := plotter.NewScatter(piece)
			if err != nil {
				return err
			}
			dots.GlyphStyle = draw.GlyphStyle{Color: style.Color, Radius: look.Size / 3, Shape: draw.CircleGlyph{}}
			if c.Kind != Dots && !c.Dotted {
				dots.GlyphStyle.Radius = look.Size / 8
			}
			p.Add(dots)
			if thumb == nil {
				thumb = dots
			}
		}
		if c.Kind == Dots || len(piece) == 1 {
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

// line is a kind's stroke.
func (l Look) line(k Kind) draw.LineStyle {
	s := draw.LineStyle{Width: l.Size / 6, Color: l.Main}
	if k.InSecond() {
		s.Color = l.Second
	}
	part := l.Size / 6
	switch k {
	case Second:
		s.Dashes = []vg.Length{3 * part, 2 * part}
	case third:
		s.Dashes = []vg.Length{5 * part, 2 * part, part, 2 * part}
	case fourth:
		s.Dashes = []vg.Length{part, 1.5 * part}
	case fifth:
		s.Width = l.Size / 14
	case sixth:
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

// atRight reports whether a mark stands where words beside it would run out of the plot.
func atRight(p *plot.Plot, m Mark) bool { return m.X > p.X.Min+(p.X.Max-p.X.Min)*2/3 }
