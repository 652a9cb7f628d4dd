package chart

import (
	"math"

	"gonum.org/v1/plot/plotter"
)

// thin leaves of each column the first, the lowest, the highest and the last
// point, in their order, which draws the same picture.
func thin(all plotter.XYs, columns int) plotter.XYs {
	n := len(all)
	if n <= 4*columns || !(all[n-1].X > all[0].X) {
		return all
	}
	out := make(plotter.XYs, 0, 4*columns+8)
	wide := (all[n-1].X - all[0].X) / float64(columns)
	for from := 0; from < n; {
		to, end := from, all[0].X+wide*(math.Floor((all[from].X-all[0].X)/wide)+1)
		for to < n && (all[to].X < end || to == from) {
			to++
		}
		out = appendColumn(out, all[from:to])
		from = to
	}
	return out
}

func appendColumn(out, column plotter.XYs) plotter.XYs {
	low, high := 0, 0
	for i, p := range column {
		if p.Y < column[low].Y {
			low = i
		}
		if p.Y > column[high].Y {
			high = i
		}
	}
	last := -1
	for _, i := range []int{0, min(low, high), max(low, high), len(column) - 1} {
		if i > last {
			out, last = append(out, column[i]), i
		}
	}
	return out
}

// pieces are the stretches of points between gaps (NaN).
func pieces(x, y []float64) []plotter.XYs {
	var out []plotter.XYs
	var piece plotter.XYs
	end := func() {
		if len(piece) > 0 {
			out, piece = append(out, piece), nil
		}
	}
	for i := 0; i < min(len(x), len(y)); i++ {
		if math.IsNaN(x[i]) || math.IsNaN(y[i]) {
			end()
			continue
		}
		piece = append(piece, plotter.XY{X: x[i], Y: y[i]})
	}
	end()
	return out
}
