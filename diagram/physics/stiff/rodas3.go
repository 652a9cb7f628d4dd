package stiff

import "math"

// gamma is RODAS3's diagonal.
const gamma = 0.5

// try computes the state after a step h into at and the error into k[3]. It
// reports whether the matrix had an inverse.
//
// The four stages are written for the increments u = Σγ·k, which spares the
// products with the Jacobian.
func (in *Integrator) try(h float64) bool {
	if !in.lu.factor(in.jac, 1/(gamma*h)) {
		return false
	}
	k1, k2, k3, k4 := in.k[0], in.k[1], in.k[2], in.k[3]
	copy(k1, in.f0)
	in.lu.solve(k1)
	for i, f := range in.f0 {
		k2[i] = f + 4*k1[i]/h
	}
	in.lu.solve(k2)
	for i, y := range in.Y {
		in.at[i] = y + 2*k1[i]
	}
	in.system.F(in.at, in.f)
	for i, f := range in.f {
		k3[i] = f + (k1[i]-k2[i])/h
	}
	in.lu.solve(k3)
	for i := range in.at {
		in.at[i] += k3[i]
	}
	in.system.F(in.at, in.f)
	for i, f := range in.f {
		k4[i] = f + (k1[i]-k2[i]-8./3*k3[i])/h
	}
	in.lu.solve(k4)
	for i := range in.at {
		in.at[i] += k4[i]
	}
	return true
}

// errorOf is the root of the mean square of the errors by what is allowed.
func (in *Integrator) errorOf() float64 {
	sum := 0.0
	for i, e := range in.k[3] {
		allowed := in.Abs[i] + in.Rel*max(math.Abs(in.Y[i]), math.Abs(in.at[i]))
		sum += e / allowed * (e / allowed)
	}
	return math.Sqrt(sum / float64(len(in.Y)))
}
