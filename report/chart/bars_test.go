package chart_test

import (
	"bytes"
	"errors"
	"image/png"
	"regexp"
	"strings"
	"testing"

	"loopbook/report/chart"
)

func TestBars(t *testing.T) {
	b := chart.Bars{Y: "cases", Names: []string{"Jan", "Feb", "Mar"}, Parts: []chart.Part{
		{Name: "pump weak", Values: []float64{3, 0, 1}}, {Name: "others", Values: []float64{1, 2, 0}},
	}}
	raw, err := chart.PNG(b, chart.Plain(), 400, 240)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := png.Decode(bytes.NewReader(raw)); err != nil {
		t.Error(err)
	}
	if words, ok := b.Spot(0.2, 1); !ok || words != "Jan: pump weak 3 others 1" {
		t.Errorf("under the pointer %q, %t", words, ok)
	}
	if words, ok := b.Spot(1.1, 5); !ok || strings.Contains(words, "pump") {
		t.Errorf("a part that is 0 is told: %q", words)
	}
	if _, ok := b.Spot(7, 1); ok {
		t.Error("something stands beside the bars")
	}
	if _, err := chart.PNG(chart.Bars{}, chart.Plain(), 400, 240); !errors.Is(err, chart.ErrEmpty) {
		t.Errorf("no bars: %v, want ErrEmpty", err)
	}
}

// Nothing is counted by halves, and as many numbers stand at the axis as can be read.
func TestCountsHaveWholeNumbersAtTheirAxis(t *testing.T) {
	for most, want := range map[float64]string{1: "0 1", 2: "0 1 2", 7: "0 2 4 6 8", 40: "0 10 20 30 40", 900: "0 200 400 600 800 1000"} {
		svg, err := chart.SVG(chart.Bars{Names: []string{"Jan"}, Parts: []chart.Part{{Values: []float64{most}}}}, chart.Plain(), 400, 240)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, m := range regexp.MustCompile(`>([0-9.]+)</text>`).FindAllSubmatch(svg, -1) {
			got = append(got, string(m[1]))
		}
		if all := strings.Join(got, " "); all != want {
			t.Errorf("up to %g the axis reads %s, want %s", most, all, want)
		}
	}
}

// An axis has enough numbers to read a curve off, evenly apart, whatever it spans.
func TestAxesHaveNumbersToReadOff(t *testing.T) {
	for span, want := range map[[2]float64]string{{0, 30}: "0 5 10 15 20 25 30", {20, 148}: "20 40 60 80 100 120 140", {-3, 3}: "-3 -2 -1 0 1 2 3", {0.2, 0.7}: "0.2 0.3 0.4 0.5 0.6 0.7"} {
		flat := chart.Curve{X: []float64{span[0], span[1]}, Y: []float64{5e7, 5e7}} // written as 5e+07
		svg, err := chart.SVG(chart.Lines{Curves: []chart.Curve{flat}}, chart.Plain(), 400, 240)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, m := range regexp.MustCompile(`>(-?[0-9.]+)</text>`).FindAllSubmatch(svg, -1) {
			got = append(got, string(m[1]))
		}
		if all := strings.Join(got, " "); all != want {
			t.Errorf("from %g to %g the axis reads %s, want %s", span[0], span[1], all, want)
		}
	}
}
