package chart

import (
	"bytes"
	"fmt"
	"image"
	"io"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// inch is in points.
const inch = 72

// Image is a chart as so many pixels, of which scale (1 or more) make a unit
// of the look's sizes, with the place of its axes for whoever wants to know
// what stands under a pointer.
func Image(l Chart, look Look, width, height int, scale float64) (image.Image, Frame, error) {
	p, err := l.plot(look, width)
	if err != nil {
		return nil, Frame{}, err
	}
	dpi := inch * scale
	c := vgimg.NewWith(vgimg.UseWH(vg.Length(float64(width)/scale), vg.Length(float64(height)/scale)), vgimg.UseDPI(int(dpi+0.5)), vgimg.UseBackgroundColor(look.Paper))
	on := draw.New(c)
	p.Draw(on)
	return c.Image(), frameOf(p, on, scale, height), nil
}

// PNG is a chart for a file, so many points wide and high.
func PNG(l Chart, look Look, width, height vg.Length) ([]byte, error) {
	on := vgimg.NewWith(vgimg.UseWH(width, height), vgimg.UseDPI(2*inch), vgimg.UseBackgroundColor(look.Paper))
	return written(l, look, vgimg.PngCanvas{Canvas: on}, "PNG")
}

// SVG is a chart for a file, so many points wide and high.
func SVG(l Chart, look Look, width, height vg.Length) ([]byte, error) {
	return written(l, look, vgsvg.New(width, height), "SVG")
}

// written is a chart drawn on a file's canvas, in the file's bytes.
func written(l Chart, look Look, on interface {
	vg.CanvasSizer
	io.WriterTo
}, kind string) ([]byte, error) {
	c := draw.New(on)
	p, err := l.plot(look, int(c.Size().X)*2)
	if err != nil {
		return nil, err
	}
	p.Draw(c)
	var out bytes.Buffer
	if _, err := on.WriteTo(&out); err != nil {
		return nil, fmt.Errorf("chart as %s: %w", kind, err)
	}
	return out.Bytes(), nil
}

// Frame tells where in an image the axes stand.
type Frame struct {
	Left, Right, Top, Bottom float64 // pixels from the image's upper left corner
	X0, X1, Y0, Y1           float64 // what stands there
}

// frameOf is of a plot on a canvas that is so many pixels high, scale of them to a point.
func frameOf(p *plot.Plot, on draw.Canvas, scale float64, height int) Frame {
	c := p.DataCanvas(on)
	at := func(v vg.Length) float64 { return float64(v) * scale }
	return Frame{
		Left: at(c.Min.X), Right: at(c.Max.X), Top: float64(height) - at(c.Max.Y), Bottom: float64(height) - at(c.Min.Y),
		X0: p.X.Min, X1: p.X.Max, Y0: p.Y.Min, Y1: p.Y.Max,
	}
}

// Under is what stands at a pixel; it is false outside the axes.
func (f Frame) Under(px, py float64) (x, y float64, ok bool) {
	if !(px >= f.Left && px <= f.Right && py >= f.Top && py <= f.Bottom) {
		return 0, 0, false
	}
	return f.X0 + (px-f.Left)/(f.Right-f.Left)*(f.X1-f.X0), f.Y1 - (py-f.Top)/(f.Bottom-f.Top)*(f.Y1-f.Y0), true
}
