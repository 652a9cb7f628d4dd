package chart

import (
	"image/color"
	"math"
	"slices"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Face is a grid of places over a face, the first row at the top: each with its
// number on its colour.
type Face struct {
	Unit  string
	Rows  [][]Place // equally long
	Words string    // under the face: what a framed place is; may be empty
}

// Place is one of a face's places.
type Place struct {
	Value     float64 // NaN: not read
	Text      string
	Fill, Ink color.Color
	Framed    bool // stands out
}

// Unframed is the face without its frames and their words, for who is to find
// what stands out.
func (f Face) Unframed() Face {
	out := Face{Unit: f.Unit}
	for _, row := range f.Rows {
		row = slices.Clone(row)
		for i := range row {
			row[i].Framed = false
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

func (f Face) plot(look Look, _ int) (*plot.Plot, error) {
	if len(f.Rows) == 0 || len(f.Rows[0]) == 0 {
		return nil, ErrEmpty
	}
	p := plot.New()
	dress(p, look)
	p.HideAxes()
	p.Add(tiles{f, look})
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, float64(len(f.Rows[0])), 0, float64(len(f.Rows))
	if f.Words != "" {
		p.X.Label.Text = f.Words
	}
	return p, nil
}

// Spot is the place's number, with its row and its place in the row.
func (f Face) Spot(x, y float64) (string, bool) {
	row, column := len(f.Rows)-1-int(math.Floor(y)), int(math.Floor(x))
	if row < 0 || row >= len(f.Rows) || column < 0 || column >= len(f.Rows[row]) || math.IsNaN(f.Rows[row][column].Value) {
		return "", false
	}
	return f.Rows[row][column].Text + " " + f.Unit, true
}

// tiles draws a face's places.
type tiles struct {
	face Face
	look Look
}

// Plot is of plot.Plotter.
func (t tiles) Plot(c draw.Canvas, p *plot.Plot) {
	toX, toY := p.Transforms(&c)
	rows := len(t.face.Rows)
	for i, row := range t.face.Rows {
		for j, place := range row {
			t.tile(c, vg.Rectangle{
				Min: vg.Point{X: toX(float64(j)), Y: toY(float64(rows - 1 - i))},
				Max: vg.Point{X: toX(float64(j + 1)), Y: toY(float64(rows - i))},
			}, place)
		}
	}
}

func (t tiles) tile(c draw.Canvas, box vg.Rectangle, place Place) {
	gap := t.look.Size / 9
	box = vg.Rectangle{Min: box.Min.Add(vg.Point{X: gap, Y: gap}), Max: box.Max.Sub(vg.Point{X: gap, Y: gap})}
	if place.Fill != nil {
		c.SetColor(place.Fill)
		c.Fill(box.Path())
	}
	edge := draw.LineStyle{Color: t.look.Grid, Width: t.look.Size / 18}
	if place.Framed {
		edge = draw.LineStyle{Color: t.look.Second, Width: t.look.Size / 4}
	}
	c.StrokeLines(edge, []vg.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}, box.Min})
	style := draw.TextStyle{Color: place.Ink, XAlign: draw.XCenter, YAlign: draw.YCenter, Handler: plot.DefaultTextHandler}
	t.look.write(&style)
	if place.Ink != nil {
		style.Color = place.Ink
	}
	if room := box.Max.X - box.Min.X; style.Width(place.Text) > room {
		style.Font.Size *= room / style.Width(place.Text)
	}
	c.FillText(style, vg.Point{X: (box.Min.X + box.Max.X) / 2, Y: (box.Min.Y + box.Max.Y) / 2}, place.Text)
}
