package thermistor

import "math"

// leastSquares finds the first n of A, B and C. Each point is weighed by T²,
// for an error of 1/T is that much larger in kelvins.
//
// The columns 1, ln R and (ln R)³ are nearly parallel, so they are made
// orthogonal (Gram–Schmidt, twice) and not multiplied with each other.
func leastSquares(points []Point, n int) [3]float64 {
	columns := [3][]float64{}
	want := make([]float64, len(points))
	for i, p := range points {
		t, x := float64(p.C.Kelvin()), math.Log(p.Ohm)
		want[i] = t
		for j, v := range [3]float64{1, x, x * x * x} {
			columns[j] = append(columns[j], v*t*t)
		}
	}
	var r [3][3]float64
	var y, out [3]float64
	for j := 0; j < n; j++ {
		for twice := 0; twice < 2; twice++ {
			for i := 0; i < j; i++ {
				d := dot(columns[i], columns[j])
				r[i][j] += d
				subtract(columns[j], columns[i], d)
			}
		}
		r[j][j] = math.Sqrt(dot(columns[j], columns[j]))
		scale(columns[j], 1/r[j][j])
		y[j] = dot(columns[j], want)
		subtract(want, columns[j], y[j])
	}
	for i := n - 1; i >= 0; i-- {
		out[i] = y[i]
		for j := i + 1; j < n; j++ {
			out[i] -= r[i][j] * out[j]
		}
		out[i] /= r[i][i]
	}
	return out
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func subtract(a, b []float64, times float64) {
	for i := range a {
		a[i] -= times * b[i]
	}
}

func scale(a []float64, by float64) {
	for i := range a {
		a[i] *= by
	}
}
