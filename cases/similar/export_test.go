package similar

import (
	"math"

	"loopbook/cases"
)

// Distance is how unlike two cases are, reckoned to its end.
func Distance(a, b *cases.Digest) float64 { return distance(a, b, math.Inf(1)) }
