package warmup

import (
	"math"
	"slices"
)

// median of the values, which it sorts; NaN without any.
func median(values []float64) float64 { return quantile(values, 0.5) }

// quantile of the values, which it sorts; NaN without any.
func quantile(values []float64, share float64) float64 {
	n := len(values)
	if n == 0 {
		return math.NaN()
	}
	slices.Sort(values)
	at := share * float64(n-1)
	i := int(at)
	if i+1 >= n {
		return values[n-1]
	}
	return values[i] + (at-float64(i))*(values[i+1]-values[i])
}

// mean leaves out NaN; it is NaN where nothing is left.
func mean(values []float64) float64 {
	sum, n := 0.0, 0
	for _, v := range values {
		if !math.IsNaN(v) {
			sum, n = sum+v, n+1
		}
	}
	return sum / float64(n)
}

func pointer[T any](v T) *T { return &v }
