package stiff

import (
	"fmt"
	"math"
)

// leapGamma makes ROS2 L-stable with a small error.
const leapGamma = 1 - 1/math.Sqrt2

// Leap carries the state to end in one step of ROS2, a Rosenbrock method of
// order 2 and L-stable (Verwer, Spee, Blom and Hundsdorfer, SIAM Journal on
// Scientific Computing 20 (1999) 1456–1480), without judging its error: half of
// the work of a step of To, for who knows how coarse a step may be.
func (in *Integrator) Leap(end float64) error {
	h := end - in.T
	if h <= 0 {
		return nil
	}
	in.slopes()
	if !in.lu.factor(in.jac, 1/(leapGamma*h)) {
		return fmt.Errorf("at %g, step %g: %w", in.T, h, ErrStuck)
	}
	k1, k2 := in.k[0], in.k[1]
	copy(k1, in.f0)
	in.lu.solve(k1) // leapGamma·h times the method's k
	for i, y := range in.Y {
		in.at[i] = y + k1[i]/leapGamma
	}
	in.system.F(in.at, k2)
	for i, k := range k1 {
		k2[i] -= 2 * k / (leapGamma * h)
	}
	in.lu.solve(k2)
	for i := range in.Y {
		in.Y[i] += (1.5*k1[i] + 0.5*k2[i]) / leapGamma
		if math.IsNaN(in.Y[i]) || math.IsInf(in.Y[i], 0) {
			return fmt.Errorf("at %g, step %g: %w", in.T, h, ErrStuck)
		}
	}
	in.T, in.Steps = end, in.Steps+1
	return nil
}
