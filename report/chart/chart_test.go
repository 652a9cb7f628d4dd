package chart_test

import (
	"bytes"
	"errors"
	"fmt"
	"image/color"
	"image/png"
	"math"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"loopbook/assets"
	"loopbook/diagram"
	"loopbook/report/chart"
)

// warmUp is an invented warm-up with a gap, a knee and ripples.
func warmUp(n int) chart.Lines {
	x, y := make([]float64, n), make([]float64, n)
	for i := range x {
		s := 1800 * float64(i) / float64(n)
		x[i] = s / 60
		y[i] = min(12+0.13*s, 88) + 1.5*math.Sin(s/40)*float64(min(i, n/2))/float64(n/2)
		if s > 300 && s < 320 {
			y[i] = math.NaN()
		}
	}
	return chart.Lines{
		X: "minutes since the start", Y: "coolant, °C",
		Curves: []chart.Curve{{Name: "measured", X: x, Y: y}},
		Bands:  []chart.Band{{Name: "this loop, healthy", X: []float64{0, 10, 30}, Low: []float64{10, 60, 84}, High: []float64{14, 95, 96}}},
		Levels: []chart.Level{{Y: 77, Name: "has to reach 77 °C"}},
		Marks:  []chart.Mark{{X: 9.7, Y: 88, Name: "opens at 88 °C"}},
	}
}

func TestSurfaces(t *testing.T) {
	l := warmUp(5000)
	img, frame, err := chart.Image(l, chart.Plain(), 900, 420, 1)
	if err != nil || img.Bounds().Dx() != 900 || img.Bounds().Dy() != 420 {
		t.Fatalf("%v, %v", err, img.Bounds())
	}
	x, y, ok := frame.Under((frame.Left+frame.Right)/2, (frame.Top+frame.Bottom)/2)
	if !ok || math.Abs(x-15) > 0.2 || math.Abs(y-(frame.Y0+frame.Y1)/2) > 0.2 {
		t.Errorf("in the middle stand %g, %g, %v", x, y, ok)
	}
	if _, _, ok := frame.Under(1, 1); ok {
		t.Error("the corner is inside the axes")
	}
	text, err := chart.PNG(l, chart.Plain(), 400, 200)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := png.Decode(bytes.NewReader(text)); err != nil || got.Bounds().Dx() != 800 {
		t.Errorf("PNG: %v", err)
	}
	svg, err := chart.SVG(l, chart.Plain(), 400, 200)
	if err != nil || !strings.Contains(string(svg), "has to reach 77 °C") {
		t.Errorf("SVG: %v", err)
	}
	if _, _, err := chart.Image(chart.Lines{Curves: []chart.Curve{{X: []float64{1}, Y: []float64{math.NaN()}}}}, chart.Plain(), 9, 9, 1); !errors.Is(err, chart.ErrEmpty) {
		t.Errorf("nothing but a gap: %v", err)
	}
}

// On a page the chart is paths and words, no picture.
func TestPageHoldsVectors(t *testing.T) {
	pdf := gofpdf.New("P", "pt", "A4", "")
	pdf.AddUTF8FontFromBytes("DejaVu", "", bytes.Clone(assets.DejaVuSans))
	pdf.SetCompression(false)
	pdf.AddPage()
	if err := chart.OnPage(warmUp(5000), pdf, pen, diagram.Box{50, 60, 480, 220}); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(out.Bytes(), []byte("/Subtype /Image")) || bytes.Count(out.Bytes(), []byte(" l\n")) < 500 {
		t.Errorf("%d bytes, %d strokes", out.Len(), bytes.Count(out.Bytes(), []byte(" l\n")))
	}
}

// Thinning keeps the lowest and the highest of each column: the pixels of a long
// series and of its every point are the same but for rounding at a column's edge.
func TestThinningShowsEveryPeak(t *testing.T) {
	n := 60000
	x, y := make([]float64, n), make([]float64, n)
	for i := range x {
		x[i] = float64(i)
	}
	y[31234], y[45678] = 50, -50
	l := chart.Lines{Curves: []chart.Curve{{X: x, Y: y}}}
	_, frame, err := chart.Image(l, chart.Plain(), 400, 200, 1)
	if err != nil {
		t.Fatal(err)
	}
	if frame.Y0 > -50 || frame.Y1 < 50 {
		t.Errorf("from %g to %g, want the peaks at -50 and 50", frame.Y0, frame.Y1)
	}
}

// A gap hides nothing but itself, however long the series is, and a point between two gaps is seen.
func TestAGapHidesOnlyItself(t *testing.T) {
	n := 60000
	x, y := make([]float64, n), make([]float64, n)
	for i := range x {
		if x[i] = float64(i); i%10 == 1 {
			y[i] = math.NaN()
		}
	}
	y[31235], y[45678] = 50, -50
	_, frame, err := chart.Image(chart.Lines{Curves: []chart.Curve{{X: x, Y: y}}}, chart.Plain(), 400, 200, 1)
	if err != nil || frame.X0 > 0 || frame.X1 < 59999 || frame.Y0 > -50 || frame.Y1 < 50 {
		t.Errorf("%v, from %g to %g and %g to %g, want all of the series and its peaks", err, frame.X0, frame.X1, frame.Y0, frame.Y1)
	}
	lone := chart.Lines{Curves: []chart.Curve{{X: []float64{0, 1, 2, 3, 4}, Y: []float64{1, 1, math.NaN(), 5, math.NaN()}}}}
	if svg, err := chart.SVG(lone, chart.Plain(), 400, 200); err != nil || !bytes.Contains(svg, []byte("A1.125,1.125")) {
		t.Errorf("%v: a point between two gaps isn't drawn:\n%s", err, svg)
	}
}

// 100,000 points: wanted in 50 ms.
func BenchmarkImage100000(b *testing.B) {
	l := warmUp(100000)
	for i := 0; i < b.N; i++ {
		if _, _, err := chart.Image(l, chart.Plain(), 900, 420, 1); err != nil {
			b.Fatal(err)
		}
	}
}

// A face is tiles and words on every surface, and the pointer finds a place's
// number, the first row on top.
func TestAFaceOnEverySurface(t *testing.T) {
	gray := func(v float64) chart.Place {
		return chart.Place{Value: v, Text: fmt.Sprint(v), Fill: color.Gray{uint8(v)}, Ink: color.White, Framed: v < 60}
	}
	f := chart.Face{Unit: "°C", Rows: [][]chart.Place{{gray(80), gray(81)}, {gray(50), {Value: math.NaN(), Text: "–"}}}, Words: "framed: cold"}
	_, frame, err := chart.Image(f, chart.Plain(), 400, 200, 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		x, y float64
		want string
	}{{0.2, 0.2, "80 °C"}, {0.8, 0.2, "81 °C"}, {0.2, 0.8, "50 °C"}, {0.8, 0.8, ""}} {
		x, y, ok := frame.Under(frame.Left+tt.x*(frame.Right-frame.Left), frame.Top+tt.y*(frame.Bottom-frame.Top))
		if got, _ := f.Spot(x, y); !ok || got != tt.want {
			t.Errorf("at %g, %g stands %q, want %q", tt.x, tt.y, got, tt.want)
		}
	}
	svg, err := chart.SVG(f, chart.Plain(), 400, 200)
	if err != nil || !strings.Contains(string(svg), "framed: cold") {
		t.Errorf("SVG: %v", err)
	}
	pdf := gofpdf.New("P", "pt", "A4", "")
	pdf.AddUTF8FontFromBytes("DejaVu", "", bytes.Clone(assets.DejaVuSans))
	pdf.SetCompression(false)
	pdf.AddPage()
	var out bytes.Buffer
	if err := errors.Join(chart.OnPage(f, pdf, pen, diagram.Box{50, 60, 400, 200}), pdf.Output(&out)); err != nil || bytes.Contains(out.Bytes(), []byte("/Subtype /Image")) {
		t.Errorf("on a page: %v", err)
	}
	if _, err := chart.SVG(chart.Face{}, chart.Plain(), 400, 200); !errors.Is(err, chart.ErrEmpty) {
		t.Errorf("no rows: %v", err)
	}
}

func TestThePointerFindsTheNearestPoint(t *testing.T) {
	l := chart.Lines{X: "minutes", Y: "coolant, °C", Curves: []chart.Curve{
		{Name: "before", X: []float64{0, 10}, Y: []float64{20, 60}}, {Name: "after", X: []float64{0, 10}, Y: []float64{20, math.NaN()}},
	}}
	if got, ok := l.Spot(9, 90); !ok || got != "before: 60 °C, 10 minutes" {
		t.Errorf("near the end: %q", got)
	}
	l.Names = []string{"engine", "", "", "", "", "", "", "", "", "", "radiator"}
	if got, _ := l.Spot(9, 90); got != "before: 60 °C, radiator" {
		t.Errorf("by its name: %q", got)
	}
	if got, ok := (chart.Lines{}).Spot(1, 1); ok {
		t.Errorf("nothing is at %q", got)
	}
}
