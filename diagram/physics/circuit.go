package physics

import (
	"fmt"

	"loopbook/diagram"
	"loopbook/diagram/physics/network"
)

// circuit is a layout as branches and lumps: parts are the network's nodes and
// a lump of coolant each; hoses are its branches and one lump, or two where the
// layout has a point at both ends.
type circuit struct {
	net     *network.Network
	parts   []part
	hoses   []hose
	engines []int // the parts' indices: one engine, or head and block
	valves  []int // thermostats; the first is the one that points are read at
	senses  []int // lumps that their wax feels
	pump    int
	rad     int
	hotTank int // lump at the end of the hose into the radiator
	heater  int // -1: none
	cooler  int // of oil; -1: none
	oil     int // lump of the oil itself
	lumps   int
	points  map[diagram.Point]int // lump of each
	cold    int                   // lump of the lower hose that ends at the thermostat; -1: none does
}

type part struct {
	kind diagram.PartKind
	lump int
}

// role is what a hose's branch has besides the hose.
type role int

const (
	plain  role = iota
	main        // through the thermostat, to or from the radiator
	bypass      // through the thermostat's other side
)

type hose struct {
	bore       diagram.Bore
	from, to   int // parts
	lump, last int // its lumps, at From and at To
	role       role
	valve      int // of the circuit's, where the role has one
}

// newCircuit reads a layout. A part that no coolant flows through, as a
// recovery bottle at the end of its line, has no place in it.
func newCircuit(l *diagram.Loop) (*circuit, error) {
	c := &circuit{heater: -1, cooler: -1, cold: -1, points: map[diagram.Point]int{}}
	index := c.addParts(l)
	for _, h := range l.Hoses {
		from, okFrom := index[h.From]
		to, okTo := index[h.To]
		if okFrom && okTo {
			c.addHose(l, h, from, to)
		}
	}
	if lower, ok := c.points[diagram.PumpIn]; ok && l.Thermostat == diagram.Inlet {
		c.cold = lower
	}
	if c.cooler >= 0 {
		c.oil = c.lump()
	}
	for i := range c.parts { // last, which keeps the heat balance's matrix sparse
		c.parts[i].lump = c.lump()
	}
	for v := range c.valves {
		c.senses = append(c.senses, c.sense(v))
	}
	branches := make([]network.Branch, len(c.hoses))
	for i, h := range c.hoses {
		branches[i] = network.Branch{From: h.from, To: h.to, Resistance: 1}
	}
	net, err := network.New(len(c.parts), branches)
	if err != nil {
		return nil, fmt.Errorf("layout %s: %w", l.ID, err)
	}
	c.net = net
	return c, nil
}

func (c *circuit) addParts(l *diagram.Loop) map[string]int {
	ends := map[string]int{}
	for _, h := range l.Hoses {
		ends[h.From]++
		ends[h.To]++
	}
	index := map[string]int{}
	for _, p := range l.Parts {
		if ends[p.ID] >= 2 {
			index[p.ID] = c.addPart(p.Kind)
		}
	}
	return index
}

func (c *circuit) addPart(kind diagram.PartKind) int {
	i := len(c.parts)
	c.parts = append(c.parts, part{kind: kind})
	switch {
	case kind.Burns():
		c.engines = append(c.engines, i)
	case kind == diagram.Thermostat:
		c.valves = append(c.valves, i)
	case kind == diagram.Pump:
		c.pump = i
	case kind == diagram.Radiator:
		c.rad = i
	case kind == diagram.HeaterCore:
		c.heater = i
	case kind == diagram.OilCooler:
		c.cooler = i
	}
	return i
}

func (c *circuit) lump() int { c.lumps++; return c.lumps - 1 }

func (c *circuit) addHose(l *diagram.Loop, h diagram.Hose, from, to int) {
	added := hose{bore: h.Bore, from: from, to: to, lump: c.lump()}
	added.last = added.lump
	if h.Ends[0] != h.Ends[1] {
		added.last = c.lump()
	}
	if to == c.rad && c.parts[to].kind == diagram.Radiator && h.Bore == diagram.BoreMain {
		c.hotTank = added.last
	}
	added.role, added.valve = c.roleOf(h, l.Thermostat, from, to)
	for i, p := range h.Ends {
		if _, known := c.points[p]; p != "" && !known {
			c.points[p] = []int{added.lump, added.last}[i]
		}
	}
	c.hoses = append(c.hoses, added)
}

// roleOf tells a thermostat's sides apart: a thinner hose is the bypass; of the
// others, the one towards the radiator has the main valve: at the engine's outlet
// what leaves the thermostat, at its inlet what comes to it.
func (c *circuit) roleOf(h diagram.Hose, side diagram.Side, from, to int) (role, int) {
	for v, part := range c.valves {
		switch {
		case part != from && part != to:
			continue
		case h.Bore != diagram.BoreMain:
			return bypass, v
		case (part == from) == (side == diagram.Outlet):
			return main, v
		}
		return plain, v
	}
	return plain, 0
}

// sense is the lump that a thermostat's wax feels: its housing's, or where no
// bypass keeps that flowing, the part's that the wax reaches into.
func (c *circuit) sense(valve int) int {
	at, reaches := c.valves[valve], c.valves[valve]
	for _, h := range c.hoses {
		switch {
		case h.from != at && h.to != at:
		case h.role == bypass:
			return c.parts[at].lump
		case h.role == plain && h.to == at:
			reaches = h.from
		}
	}
	return c.parts[reaches].lump
}
