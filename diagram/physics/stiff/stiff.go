// Package stiff integrates ordinary differential equations dy/dt = f(y) of
// which some parts settle far quicker than the whole: small volumes in a
// strong flow beside a heavy engine block.
//
// The method is RODAS3, a Rosenbrock method of order 3 with one of order 2 in
// it to judge the error; L-stable and stiffly accurate: Sandu, Verwer, Blom,
// Spee, Carmichael and Potra, Benchmarking stiff ODE solvers for atmospheric
// chemistry problems II, Atmospheric Environment 31 (1997) 3459–3472. Each step
// solves four linear systems with one matrix and no iteration. Whatever sum of
// y is constant by f and its Jacobian, as energy or mass, stays so to rounding.
package stiff

import (
	"errors"
	"fmt"
	"math"
)

// ErrStuck is wrapped when no step is small enough, or f gives no number.
var ErrStuck = errors.New("integration is stuck")

// System is what is integrated. A state that is to know the time has it among
// its values.
type System struct {
	// F sets dydt to f(y).
	F func(y, dydt []float64)

	// Jacobian sets jac, row by row and all zero before, to ∂f/∂y.
	Jacobian func(y, jac []float64)
}

// Integrator carries a state through time. It allocates nothing after New and
// serves one goroutine at a time.
type Integrator struct {
	T   float64   // where the state is
	Y   []float64 // the state; a caller may change it between calls of To
	Rel float64   // error allowed by step, as a part of each value
	Abs []float64 // and its least, for each value

	Steps int // taken so far

	system System
	next   float64 // the step to try next
	lu     luMatrix
	jac    []float64
	f0, f  []float64 // of the state, and at
	at     []float64
	k      [4][]float64
}

// New is an integrator at time 0 with a copy of y, with Rel 1e-6 and each Abs 1e-9.
func New(system System, y []float64) *Integrator {
	n := len(y)
	in := &Integrator{Rel: 1e-6, system: system, lu: newLU(n), jac: make([]float64, n*n)}
	for _, v := range []*[]float64{&in.Y, &in.Abs, &in.f0, &in.f, &in.at, &in.k[0], &in.k[1], &in.k[2], &in.k[3]} {
		*v = make([]float64, n)
	}
	copy(in.Y, y)
	for i := range in.Abs {
		in.Abs[i] = 1e-9
	}
	return in
}

// To carries the state to end, which is not before T. An error leaves it where
// it could still go.
func (in *Integrator) To(end float64) error {
	for in.T < end {
		if err := in.advance(end); err != nil {
			return err
		}
	}
	return nil
}

// advance takes one step that passes, not beyond end.
func (in *Integrator) advance(end float64) error {
	in.slopes()
	if in.next == 0 {
		in.next = in.first(end - in.T)
	}
	for rejected := false; ; rejected = true {
		h := in.step(end)
		if !(h > 1e-15*math.Abs(in.T)) {
			return fmt.Errorf("at %g, step %g: %w", in.T, h, ErrStuck)
		}
		e := math.Inf(1)
		if in.try(h) {
			e = in.errorOf()
		}
		in.plan(h, e, rejected)
		if e <= 1 {
			in.accept(h, end)
			return nil
		}
	}
}

// slopes sets f and its derivatives by y where the state is.
func (in *Integrator) slopes() {
	in.system.F(in.Y, in.f0)
	clear(in.jac)
	in.system.Jacobian(in.Y, in.jac)
}

// step is the one to try: the planned one, or what is left, stretched or
// halved so that no crumb remains for the end.
func (in *Integrator) step(end float64) float64 {
	h, left := in.next, end-in.T
	switch {
	case h >= 0.999*left:
		return left
	case h > 0.5*left:
		return 0.5 * left
	}
	return h
}

// plan sets the next step from the error e that h left, by the usual law with
// order 3. A last step that was cut short for the end doesn't shorten the plan.
func (in *Integrator) plan(h, e float64, rejected bool) {
	factor := 0.2
	if !math.IsInf(e, 0) && !math.IsNaN(e) {
		factor = min(max(0.9*math.Pow(max(e, 1e-9), -1./3), 0.2), 6)
	}
	if rejected {
		factor = min(factor, 1)
	}
	if e <= 1 && h < in.next && factor >= 1 {
		in.next = max(in.next, factor*h)
		return
	}
	in.next = factor * h
}

func (in *Integrator) accept(h, end float64) {
	copy(in.Y, in.at)
	if h == end-in.T {
		in.T = end
	} else {
		in.T += h
	}
	in.Steps++
}

// first is a step over which the state changes by about a hundredth of itself.
func (in *Integrator) first(span float64) float64 {
	size, speed := 0.0, 0.0
	for i, d := range in.f0 {
		allowed := in.Abs[i] + in.Rel*math.Abs(in.Y[i])
		size = math.Hypot(size, in.Y[i]/allowed)
		speed = math.Hypot(speed, d/allowed)
	}
	if !(speed > 0) {
		return span
	}
	return min(max(0.01*size/speed, 1e-9*span), span)
}
