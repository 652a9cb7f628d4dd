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

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
)

// ErrEmpty is wrapped when there is nothing to draw.
var ErrEmpty = errors.New("nothing to draw")

// Chart is what can be drawn on any surface: Lines, Bars or a Face.
type Chart interface {
	// Spot is what stands nearest to a place inside the axes, in words; false
	// where nothing does.
	Spot(x, y float64) (string, bool)

	plot(look Look, columns int) (*plot.Plot, error)
}

// Look is the colours and sizes of a surface.
type Look struct {
	Ink, Soft, Grid, Paper color.Color
	Main, Second, Band     color.Color
	Size                   vg.Length   // of the text
	Fonts                  *font.Cache // with the one font of the text; nil: the plotter's own
}

// Plain is the look of a printed page.
func Plain() Look {
	return Look{
		Ink: color.Gray{0x20}, Soft: color.Gray{0x56}, Grid: color.Gray{0xd8}, Paper: color.White,
		Main: color.NRGBA{0x00, 0x60, 0x9a, 0xff}, Second: color.NRGBA{0x9c, 0x3c, 0x00, 0xff},
		Band: color.NRGBA{0xe2, 0xed, 0xf3, 0xff}, Size: 9,
	}
}

func dress(p *plot.Plot, look Look) {
	p.BackgroundColor = look.Paper
	look.write(&p.Legend.TextStyle)
	p.Legend.Padding, p.Legend.YOffs, p.Legend.XOffs = look.Size/4, look.Size, -look.Size
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.Tick.Marker = evenTicks{}
		a.Color, a.LineStyle.Color, a.Tick.Color = look.Soft, look.Soft, look.Soft
		look.write(&a.Label.TextStyle)
		look.write(&a.Tick.Label)
	}
}

// write sets a style of text to the look's.
func (l Look) write(style *text.Style) {
	style.Color, style.Font.Size, style.Font.Variant = l.Ink, l.Size, "Sans"
	if l.Fonts != nil {
		style.Font, style.Handler = font.Font{Size: l.Size}, text.Plain{Fonts: l.Fonts}
	}
}

// nameX names the places 0, 1, 2 … along x, aslant so that long names fit.
func nameX(p *plot.Plot, names []string, aslant bool) {
	const slope = 0.6 // radians
	ticks := make([]plot.Tick, len(names))
	for i, name := range names {
		ticks[i] = plot.Tick{Value: float64(i), Label: name}
	}
	p.X.Tick.Marker = plot.ConstantTicks(ticks)
	if aslant {
		p.X.Tick.Label.Rotation, p.X.Tick.Label.XAlign, p.X.Tick.Label.YAlign = slope, text.XRight, text.YTop
	}
}
