package stiff

import "math"

// gamma is RODAS3's diagonal.
const gamma = 0.5

// try computes the state after a step h into at and the error into k[3]. It
// reports whether the matrix had an inverse.
//
// The four stages are written for the increments u = Σγ·k, which spares the
// products with the Jacobian; a system that knows no time has no ft.
func (in *Integrator) try(h float64) bool {
	if !in.lu.factor(in.jac, 1/(gamma*h)) {
		return false
	}
	k1, k2, k3, k4 := in.k[0], in.k[1], in.k[2], in.k[3]
	for i, f := range in.f0 {
		k1[i] = f + 0.5*h*in.ft[i]
	}
	in.lu.solve(k1)
	for i, f := range in.f0 {
		k2[i] = f + 4*k1[i]/h + 1.5*h*in.ft[i]
	}
	in.lu.solve(k2)
	for i, y := range in.Y {
		in.at[i] = y + 2*k1[i]
	}
	in.system.F(in.T+h, in.at, in.f)
	for i, f := range in.f {
		k3[i] = f + (k1[i]-k2[i])/h
	}
	in.lu.solve(k3)
	for i := range in.at {
		in.at[i] += k3[i]
	}
	in.system.F(in.T+h, in.at, in.f)
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

// slopes sets the derivatives of f by y and, unless it knows no time, by t.
func (in *Integrator) slopes() {
	if !in.system.Autonomous {
		d := 1e-7 * max(math.Abs(in.T), 1e-3)
		in.system.F(in.T+d, in.Y, in.ft)
		for i, f := range in.f0 {
			in.ft[i] = (in.ft[i] - f) / d
		}
	}
	clear(in.jac)
	if in.system.Jacobian != nil {
		in.system.Jacobian(in.T, in.Y, in.jac)
		return
	}
	n := len(in.Y)
	copy(in.at, in.Y)
	for j, y := range in.Y {
		d := 1e-7 * max(math.Abs(y), in.Abs[j])
		in.at[j] = y + d
		in.system.F(in.T, in.at, in.f)
		for i := range in.f {
			in.jac[i*n+j] = (in.f[i] - in.f0[i]) / d
		}
		in.at[j] = y
	}
}
