package exchanger

import "math"

// unmixed is the exact series for cross-flow with both streams unmixed, in
// the form of Mason (1954): with the incomplete sums of two Poisson
// distributions, of means a = NTU and b = Cr·NTU,
//
//	ε = 1/b Σ_{n≥0} (1 − e^−a Σ_{j≤n} a^j/j!) (1 − e^−b Σ_{j≤n} b^j/j!)
//
// Every term is positive and falls, so the sum loses no digits.
func unmixed(ntu, cr float64) float64 {
	a, b := ntu, cr*ntu
	if b == 0 {
		return -math.Expm1(-a)
	}
	restA, restB := -math.Expm1(-a), -math.Expm1(-b)
	termA, termB := math.Exp(-a), math.Exp(-b)
	sum := 0.0
	for n := 1.0; ; n++ {
		sum += restA * restB
		if n > b && restA*restB < 1e-12*sum {
			return sum / b
		}
		termA *= a / n
		termB *= b / n
		restA = max(restA-termA, 0)
		restB = max(restB-termB, 0)
	}
}
