package chart

import (
	"math"

	"gonum.org/v1/plot/plotter"
)

// thin leaves of each column the first, the lowest, the highest and the last
// point, in their order, which draws the same picture. A gap (NaN) stays one.
func thin(x, y []float64, columns int) plotter.XYs {
	n := min(len(x), len(y))
	out := make(plotter.XYs, 0, min(n, 4*columns+8))
	if n <= 4*columns || !(x[n-1] > x[0]) {
		for i := 0; i < n; i++ {
			out = append(out, plotter.XY{X: x[i], Y: y[i]})
		}
		return out
	}
	wide := (x[n-1] - x[0]) / float64(columns)
	for from := 0; from < n; {
		to, end := from, x[0]+wide*(math.Floor((x[from]-x[0])/wide)+1)
		for to < n && (x[to] < end || to == from) {
			to++
		}
		out = appendColumn(out, x[from:to], y[from:to])
		from = to
	}
	return out
}

func appendColumn(out plotter.XYs, x, y []float64) plotter.XYs {
	low, high := 0, 0
	for i, v := range y {
		if math.IsNaN(v) {
			return append(out, plotter.XY{X: x[i], Y: v}) // a gap somewhere in it
		}
		if v < y[low] {
			low = i
		}
		if v > y[high] {
			high = i
		}
	}
	last := -1
	for _, i := range []int{0, min(low, high), max(low, high), len(y) - 1} {
		if i > last {
			out, last = append(out, plotter.XY{X: x[i], Y: y[i]}), i
		}
	}
	return out
}

// pieces are the stretches between gaps.
func pieces(all plotter.XYs) []plotter.XYs {
	var out []plotter.XYs
	from := 0
	for i := 0; i <= len(all); i++ {
		if i < len(all) && !math.IsNaN(all[i].Y) && !math.IsNaN(all[i].X) {
			continue
		}
		if i > from {
			out = append(out, all[from:i])
		}
		from = i + 1
	}
	return out
}
