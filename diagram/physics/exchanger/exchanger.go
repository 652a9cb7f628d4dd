// Package exchanger says how much of the heat that could pass between two
// streams does pass: effectiveness against the number of transfer units.
//
// The streams cross, each in channels of its own, as coolant in a finned core's
// tubes and the air between them do. NTU is UA/Cmin and Cr is Cmin/Cmax, with C
// the heat capacity rate of a stream; effectiveness is the heat that passes by
// the heat that would pass in an endless counter-flow exchanger. All three are
// without unit. See Kays and London, Compact Heat Exchangers.
package exchanger

import "math"

// Conductance is the heat that passes for each kelvin between the streams as
// they come in, for their capacity rates a and b and the conductance ua of the
// wall, all in one unit, as kW/K. A stream that stands still takes none.
func Conductance(ua, a, b float64) float64 {
	least, most := min(a, b), max(a, b)
	if !(least > 0) || !(ua > 0) {
		return 0
	}
	return Effectiveness(ua/least, least/most) * least
}

// endless is an NTU after which nothing is gained, while exp(−NTU) is still above 0.
const endless = 200

// Effectiveness is from 0 to 1. NTU is from 0 up and Cr from 0 to 1; values
// beyond are taken for the nearest end, NaN gives NaN.
//
// It is the exact series for cross-flow with both streams unmixed, in the form
// of Mason (1954): with the incomplete sums of two Poisson distributions, of
// means a = NTU and b = Cr·NTU,
//
//	ε = 1/b Σ_{n≥0} (1 − e^−a Σ_{j≤n} a^j/j!) (1 − e^−b Σ_{j≤n} b^j/j!)
//
// Every term is positive and falls, so the sum loses no digits.
func Effectiveness(ntu, cr float64) float64 {
	cr = min(max(cr, 0), 1)
	a := min(max(ntu, 0), endless)
	b := cr * a
	if cr < 1e-9 || b == 0 { // one stream boils or condenses, or nothing passes
		return -math.Expm1(-a)
	}
	restA, restB := -math.Expm1(-a), -math.Expm1(-b)
	termA, termB := math.Exp(-a), math.Exp(-b)
	sum := 0.0
	for n := 1.0; ; n++ {
		sum += restA * restB
		if !(n <= b) && !(restA*restB >= 1e-12*sum) { // so that NaN ends too
			return sum / b
		}
		termA *= a / n
		termB *= b / n
		restA = max(restA-termA, 0)
		restB = max(restB-termB, 0)
	}
}
