package experience

import (
	"slices"

	"loopbook/cases"
)

// Time is how many minutes of checks it took to a verdict.
type Time struct {
	Cause                cases.Cause // empty: of all
	N                    int
	Quarter, Half, Three float64 // a quarter of the cases took less, half, three quarters
}

func times(minutes map[cases.Cause][]float64, order []CauseCount) []Time {
	var all []float64
	var out []Time
	for _, c := range order {
		if m := minutes[c.Cause]; len(m) > 0 {
			all = append(all, m...)
			out = append(out, timeOf(c.Cause, m))
		}
	}
	if len(all) == 0 {
		return nil
	}
	return append([]Time{timeOf("", all)}, out...)
}

func timeOf(cause cases.Cause, m []float64) Time {
	slices.Sort(m)
	return Time{cause, len(m), quantile(m, 0.25), quantile(m, 0.5), quantile(m, 0.75)}
}

// quantile of a sorted list, between neighbours by their distance (Hyndman and Fan
// 1996, definition 7).
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	i := int(at)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
