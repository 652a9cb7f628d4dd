package chart

import (
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/plot"
)

// evenTicks stand at multiples of 1, 2 or 5 and a power of ten, some six of them, each with its number: the plotter's own
// are three or four, and most of them have none.
type evenTicks struct{}

func (evenTicks) Ticks(low, high float64) []plot.Tick {
	const wanted = 6
	step := math.Pow(10, math.Floor(math.Log10((high-low)/wanted)))
	for _, times := range []float64{2, 2.5, 2} { // 1, 2, 5, 10
		if larger := step * times; math.Abs((high-low)/larger-wanted) < math.Abs((high-low)/step-wanted) {
			step = larger
		}
	}
	var out []plot.Tick
	const slip = 1e-9                                                 // of a step, by rounding
	for i := math.Ceil(low/step-slip) + 0; i <= high/step+slip; i++ { // and never a negative zero
		out = append(out, plot.Tick{Value: min(max(i*step, low), high), Label: strconv.FormatFloat(i*step, 'g', 5, 64)})
	}
	return out
}

// logTicks number 1, 2 and 5 of each decade, or of more than three only 1, so that a span of less than a decade can be
// read off too.
type logTicks struct{}

func (logTicks) Ticks(low, high float64) []plot.Tick {
	const few = 3
	numbered := []int{1, 2, 5}
	if math.Log10(high/low) > few {
		numbered = numbered[:1]
	}
	var out []plot.Tick
	for decade := math.Pow(10, math.Floor(math.Log10(low))); decade <= high; decade *= 10 {
		for i := 1; i < 10; i++ {
			tick := plot.Tick{Value: decade * float64(i)}
			if slices.Contains(numbered, i) {
				tick.Label = strconv.FormatFloat(tick.Value, 'g', 5, 64)
			}
			out = append(out, tick)
		}
	}
	return out
}

// countTicks are whole numbers, since nothing is counted by halves.
type countTicks struct{}

func (countTicks) Ticks(_, high float64) []plot.Tick {
	const most = 6
	step := 1.0
	for i := 0; high/step > most; i++ {
		step *= []float64{2, 2.5, 2}[i%3] // 1, 2, 5, 10 …
	}
	var out []plot.Tick
	for v := 0.0; v <= high; v += step {
		out = append(out, plot.Tick{Value: v, Label: strconv.FormatFloat(v, 'f', 0, 64)})
	}
	return out
}
