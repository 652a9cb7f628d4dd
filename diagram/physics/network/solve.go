package network

import (
	"fmt"
	"math"
)

// rounds is far above the need: a cold start takes some ten, the next
// solution three or four.
const rounds = 100

// Solve finds flows and pressures by the global gradient method of Todini and
// Pilati (1987): Newton's method on all branches and nodes, reduced to a
// symmetric system of the nodes' pressures. It starts at FlowLS.
//
// Once the nodes balance, after the first step, a step is a circulation, and
// the work that the drops do along it falls at first: where a whole step goes
// too far it is halved. That work is convex in the flows, so every start leads to
// the one solution.
func (n *Network) Solve() error {
	for round := 0; round < rounds; round++ {
		if err := n.newton(); err != nil {
			return err
		}
		part := 1.0
		if round > 0 {
			part = n.part()
		}
		for i, s := range n.step {
			n.FlowLS[i] += part * s
		}
		if n.within(1e-6) {
			return nil // the next step would be some square of this one
		}
	}
	return fmt.Errorf("no flows after %d rounds: %w", rounds, ErrNetwork)
}

// newton sets the step of each flow and the pressures that belong to it.
func (n *Network) newton() error {
	m := len(n.PressureKPa) - 1
	p := n.PressureKPa[1:]
	clear(n.matrix)
	copy(p, n.SupplyLS[1:])
	for i := range n.Branches {
		b := &n.Branches[i]
		drop, slope := b.drop(n.FlowLS[i], n.CreepLS)
		if !(slope > 0) || math.IsInf(slope, 0) || math.IsNaN(drop) {
			return fmt.Errorf("branch %d of resistance %g at %g L/s: %w", i, b.Resistance, n.FlowLS[i], ErrNetwork)
		}
		n.slope[i] = slope
		n.step[i] = -drop / slope // what is left when the pressures are known
		n.spread(b, 1/slope, n.FlowLS[i]+n.step[i])
	}
	if !cholesky(n.matrix, p, m) {
		return fmt.Errorf("pressures undetermined: %w", ErrNetwork)
	}
	n.PressureKPa[0] = 0
	for i := range n.Branches {
		b := &n.Branches[i]
		n.step[i] += (n.PressureKPa[b.From] - n.PressureKPa[b.To]) / n.slope[i]
	}
	return nil
}

// spread adds a branch's conductance to the nodes' matrix, and the flow that
// it carries whatever the pressures are to the right side.
func (n *Network) spread(b *Branch, conductance, flow float64) {
	m := len(n.PressureKPa) - 1
	f, t := b.From-1, b.To-1
	if f >= 0 {
		n.matrix[f*m+f] += conductance
		n.PressureKPa[b.From] -= flow
	}
	if t >= 0 {
		n.matrix[t*m+t] += conductance
		n.PressureKPa[b.To] += flow
	}
	if f >= 0 && t >= 0 {
		n.matrix[f*m+t] -= conductance
		n.matrix[t*m+f] -= conductance
	}
}

// part is how much of the step to go: all of it, unless the work along the
// step has turned and grows faster than half as fast as it fell. Close to the
// end both are rounding, and Newton's step is the best there is.
func (n *Network) part() float64 {
	if n.within(0.01) {
		return 1
	}
	start, part := n.work(0), 1.0
	for part > 1e-9 && n.work(part) > 0.5*math.Abs(start) {
		part /= 2
	}
	return part
}

// within reports whether the step changes every flow by no more than that
// part of itself.
func (n *Network) within(part float64) bool {
	for i, s := range n.step {
		if !(math.Abs(s) <= part*(math.Abs(n.FlowLS[i])+n.CreepLS)) {
			return false
		}
	}
	return true
}

// work is what the drops do a unit of the way, that part along the step.
func (n *Network) work(part float64) float64 {
	sum := 0.0
	for i := range n.Branches {
		drop, _ := n.Branches[i].drop(n.FlowLS[i]+part*n.step[i], n.CreepLS)
		sum += drop * n.step[i]
	}
	return sum
}

// cholesky solves a·x = b of m unknowns in place, a symmetric and row by row,
// and reports whether a is positive.
func cholesky(a, b []float64, m int) bool {
	for i := 0; i < m; i++ {
		for j := 0; j <= i; j++ {
			sum := a[i*m+j]
			for k := 0; k < j; k++ {
				sum -= a[i*m+k] * a[j*m+k]
			}
			if i > j {
				a[i*m+j] = sum / a[j*m+j]
				continue
			}
			if !(sum > 0) {
				return false
			}
			a[i*m+i] = math.Sqrt(sum)
		}
	}
	for i := 0; i < m; i++ {
		for k := 0; k < i; k++ {
			b[i] -= a[i*m+k] * b[k]
		}
		b[i] /= a[i*m+i]
	}
	for i := m - 1; i >= 0; i-- {
		for k := i + 1; k < m; k++ {
			b[i] -= a[k*m+i] * b[k]
		}
		b[i] /= a[i*m+i]
	}
	return true
}
