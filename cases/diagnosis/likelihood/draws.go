package likelihood

import "math"

// What is listed on the cause's account although it has nothing to do with it:
// a second, smaller fault, a word misheard, an old code (judgement).
const (
	strayingSymptoms = 0.08
	strayingCodes    = 0.10
)

// draws takes what a case lists for draws from each cause's distribution over
// all rows, of which the share mix is even. So a cause with many symptoms
// isn't favoured for having many, and what isn't listed says nothing: few
// write down everything.
func draws(rows []Vector, mix float64) []Vector {
	sum := newVector()
	for _, row := range rows {
		for c, p := range row {
			sum[c] += p
		}
	}
	out := make([]Vector, len(rows))
	for i, row := range rows {
		out[i] = newVector()
		for c, p := range row {
			out[i][c] = math.Log((1-mix)*p/sum[c] + mix/float64(len(rows)))
		}
	}
	return out
}
