// Package network solves the flows of a closed hydraulic network: branches of
// quadratic resistance between nodes, some with a pump in them.
//
// A branch from a to b carries the flow q with
//
//	p(a) − p(b) = R·q·√(q² + creep²) − rise
//
// The creep flow makes a branch linear where almost nothing moves, as slow flow
// is, so that a shut valve has a slope and the solution is one. Units are
// kilopascals and litres per second; any other coherent pair holds as well.
package network

import (
	"errors"
	"fmt"
	"math"
)

// ErrNetwork is wrapped by every error about a network that has no solution.
var ErrNetwork = errors.New("network without a solution")

// Branch joins two nodes. Resistance and rise may change between solutions.
type Branch struct {
	From, To   int
	Resistance float64 // R above, kPa/(L/s)², above zero
	RiseKPa    float64 // what a pump, or warm coolant's lift, adds from From to To
}

// Network holds a network, its solution, and the room to solve it again
// without allocating. It serves one goroutine at a time.
type Network struct {
	Branches    []Branch
	SupplyLS    []float64 // into each node from outside; the sum must be 0
	CreepLS     float64   // see the package; above zero
	FlowLS      []float64 // of each branch, the solution and the next start
	PressureKPa []float64 // of each node, over node 0

	step   []float64 // of each branch's flow
	slope  []float64 // of each branch's drop by its flow
	matrix []float64 // of the nodes but the first, row by row
}

// New is a network of that many nodes in which every node can be reached.
// Nothing is supplied, and the creep flow is 1 mL/s.
func New(nodes int, branches []Branch) (*Network, error) {
	if err := connected(nodes, branches); err != nil {
		return nil, err
	}
	n := &Network{
		Branches:    append([]Branch(nil), branches...),
		SupplyLS:    make([]float64, nodes),
		CreepLS:     1e-3,
		FlowLS:      make([]float64, len(branches)),
		PressureKPa: make([]float64, nodes),
		step:        make([]float64, len(branches)),
		slope:       make([]float64, len(branches)),
		matrix:      make([]float64, (nodes-1)*(nodes-1)),
	}
	for i := range n.FlowLS {
		n.FlowLS[i] = 1 // at rest a branch has hardly a slope to begin with
	}
	return n, nil
}

func connected(nodes int, branches []Branch) error {
	if nodes < 1 {
		return fmt.Errorf("%d nodes: %w", nodes, ErrNetwork)
	}
	reached := make([]bool, nodes)
	reached[0] = true
	for range branches { // each round reaches further, or no round does
		for i, b := range branches {
			if b.From < 0 || b.To < 0 || b.From >= nodes || b.To >= nodes || b.From == b.To {
				return fmt.Errorf("branch %d from %d to %d: %w", i, b.From, b.To, ErrNetwork)
			}
			if reached[b.From] || reached[b.To] {
				reached[b.From], reached[b.To] = true, true
			}
		}
	}
	for i, ok := range reached {
		if !ok {
			return fmt.Errorf("node %d can't be reached: %w", i, ErrNetwork)
		}
	}
	return nil
}

// drop is the pressure that the branch takes at the flow q, and its slope.
func (b *Branch) drop(q, creep float64) (drop, slope float64) {
	root := math.Sqrt(q*q + creep*creep)
	return b.Resistance*q*root - b.RiseKPa, b.Resistance * (q*q + root*root) / root
}

// Valve is the resistance of a valve that is open to a part of its lift, 0 to
// 1, when it has full wide open: through a part of the area the same flow
// takes its square more. What leaks through when it is shut, as a part of
// the area, keeps it finite; leak is above 0.
func Valve(full, lift, leak float64) float64 {
	area := leak + (1-leak)*min(max(lift, 0), 1)
	return full / (area * area)
}

// Pump is a centrifugal pump whose curve at the rated speed is
// rise = shut-off − drop·q². By the affinity laws (flow as the speed, pressure as
// its square) the drop is that of a resistance at any speed and the shut-off
// goes with the square.
type Pump struct {
	ShutOffKPa float64
	Drop       float64 // kPa/(L/s)²
	RatedRPM   float64
}

// At is the pump, at a speed in the rated one's unit, as a branch's rise and
// resistance.
func (p Pump) At(rpm float64) (riseKPa, resistance float64) {
	s := rpm / p.RatedRPM
	return p.ShutOffKPa * s * s, p.Drop
}
