package chart_test

import (
	"bytes"
	"errors"
	"image/png"
	"math"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"loopbook/assets"
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
	img, frame, err := l.Image(chart.Plain(), 900, 420, 1)
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
	text, err := l.PNG(chart.Plain(), 400, 200)
	if err != nil {
		t.Fatal(err)
	}
	if got, err := png.Decode(bytes.NewReader(text)); err != nil || got.Bounds().Dx() != 800 {
		t.Errorf("PNG: %v", err)
	}
	svg, err := l.SVG(chart.Plain(), 400, 200)
	if err != nil || !strings.Contains(string(svg), "has to reach 77 °C") {
		t.Errorf("SVG: %v", err)
	}
	if _, _, err := (chart.Lines{Curves: []chart.Curve{{X: []float64{1}, Y: []float64{math.NaN()}}}}).Image(chart.Plain(), 9, 9, 1); !errors.Is(err, chart.ErrEmpty) {
		t.Errorf("nothing but a gap: %v", err)
	}
}

// On a page the chart is paths and words, no picture.
func TestPageHoldsVectors(t *testing.T) {
	pdf := gofpdf.New("P", "pt", "A4", "")
	pdf.AddUTF8FontFromBytes("DejaVu", "", bytes.Clone(assets.DejaVuSans))
	pdf.SetCompression(false)
	pdf.AddPage()
	if err := warmUp(5000).OnPage(pdf, chart.Plain(), "DejaVu", 50, 60, 480, 220); err != nil {
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
	_, frame, err := l.Image(chart.Plain(), 400, 200, 1)
	if err != nil {
		t.Fatal(err)
	}
	if frame.Y0 > -50 || frame.Y1 < 50 {
		t.Errorf("from %g to %g, want the peaks at -50 and 50", frame.Y0, frame.Y1)
	}
}

// 100,000 points: wanted in 50 ms.
func BenchmarkImage100000(b *testing.B) {
	l := warmUp(100000)
	for i := 0; i < b.N; i++ {
		if _, _, err := l.Image(chart.Plain(), 900, 420, 1); err != nil {
			b.Fatal(err)
		}
	}
}
