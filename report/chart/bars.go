package chart

import (
	"fmt"
	"image/color"
	"math"
	"slices"
	"unicode/utf8"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

// Bars are counts of things by their names, several parts one on the other.
type Bars struct {
	Y     string
	Names []string
	Parts []Part // as many values each as there are names
}

// Part is one part of every bar.
type Part struct {
	Name   string
	Values []float64
}

func (b Bars) plot(look Look, columns int) (*plot.Plot, error) {
	if len(b.Names) == 0 || len(b.Parts) == 0 {
		return nil, ErrEmpty
	}
	p := plot.New()
	dress(p, look)
	p.Y.Label.Text, p.Y.Tick.Marker = b.Y, countTicks{}
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = nil, look.Grid
	p.Add(grid)
	width := min(vg.Length(columns)*0.55/vg.Length(len(b.Names)), 3*look.Size)
	var below *plotter.BarChart
	for i, part := range b.Parts {
		bar, err := plotter.NewBarChart(plotter.Values(part.Values), width)
		if err != nil {
			return nil, err
		}
		bar.Color, bar.LineStyle.Width, bar.LineStyle.Color = look.part(i), look.Size/12, look.Paper
		if bar.Color == look.Paper {
			bar.LineStyle.Color = look.Soft
		}
		if below != nil {
			bar.StackOn(below)
		}
		below = bar
		p.Add(bar)
		if part.Name != "" && len(b.Parts) > 1 { // one alone is told from nothing
			p.Legend.Add(part.Name, bar)
		}
	}
	p.Legend.Top, p.Legend.YOffs = true, -look.Size/2
	b.nameX(p)
	p.Y.Min = 0
	p.Y.Max *= 1.1 + 0.08*float64(len(b.Parts)) // room for the names above the bars
	return p, nil
}

func (b Bars) nameX(p *plot.Plot) {
	const few = 4
	long := slices.ContainsFunc(b.Names, func(name string) bool { return utf8.RuneCountInString(name) > few })
	nameX(p, b.Names, long && len(b.Names) > few)
	p.X.Min, p.X.Max = -0.6, float64(len(b.Names))-0.4
}

// part is the colour of a part: the look's main one, fading towards its soft one, then only an edge, since what is
// fainter is lost on the paper.
func (l Look) part(i int) color.Color {
	inks := []color.Color{l.Main, l.Second, l.Soft, l.Paper}
	return inks[min(i, len(inks)-1)]
}

// Spot is the bar's name with its parts.
func (b Bars) Spot(x, _ float64) (string, bool) {
	i := int(math.Round(x))
	if i < 0 || i >= len(b.Names) || math.Abs(x-float64(i)) > 0.5 {
		return "", false
	}
	words := b.Names[i] + ":"
	for _, part := range b.Parts {
		if part.Values[i] != 0 {
			words += fmt.Sprintf(" %s %g", part.Name, part.Values[i])
		}
	}
	return words, true
}
