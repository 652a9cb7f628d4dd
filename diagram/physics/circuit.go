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
	net    *network.Network
	parts  []part
	hoses  []hose
	engine int // the parts' indices
	pump   int
	sense  int // where the wax is
	rad    int
	heater int // -1: none
	lumps  int
	points map[diagram.Point]int // lump of each
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
	id         string
	bore       diagram.Bore
	from, to   int // parts
	lump, last int // its lumps, at From and at To
	role       role
}

// newCircuit reads a layout. A part that no coolant flows through, as a
// recovery bottle at the end of its line, has no place in it.
func newCircuit(l *diagram.Loop) (*circuit, error) {
	c := &circuit{heater: -1, points: map[diagram.Point]int{}}
	index := c.addParts(l)
	for _, h := range l.Hoses {
		from, okFrom := index[h.From]
		to, okTo := index[h.To]
		if okFrom && okTo {
			c.addHose(l, h, from, to)
		}
	}
	for i := range c.parts { // after the hoses, which keeps the heat balance's matrix sparse
		c.parts[i].lump = c.lump()
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
		if ends[p.ID] < 2 {
			continue
		}
		i := len(c.parts)
		index[p.ID] = i
		c.parts = append(c.parts, part{kind: p.Kind})
		switch p.Kind {
		case diagram.Engine:
			c.engine = i
		case diagram.Pump:
			c.pump = i
		case diagram.Thermostat:
			c.sense = i
		case diagram.Radiator:
			c.rad = i
		case diagram.HeaterCore:
			c.heater = i
		}
	}
	return index
}

func (c *circuit) lump() int { c.lumps++; return c.lumps - 1 }

func (c *circuit) addHose(l *diagram.Loop, h diagram.Hose, from, to int) {
	added := hose{id: h.ID, bore: h.Bore, from: from, to: to, lump: c.lump()}
	added.last = added.lump
	if h.Ends[0] != h.Ends[1] {
		added.last = c.lump()
	}
	added.role = c.roleOf(h, from, to)
	for i, p := range h.Ends {
		if _, known := c.points[p]; p != "" && !known {
			c.points[p] = []int{added.lump, added.last}[i]
		}
	}
	c.hoses = append(c.hoses, added)
}

// roleOf tells the thermostat's sides apart: towards the radiator is the main
// valve, a thinner hose is the bypass, and the rest is open.
func (c *circuit) roleOf(h diagram.Hose, from, to int) role {
	a, b := c.parts[from].kind, c.parts[to].kind
	switch {
	case a != diagram.Thermostat && b != diagram.Thermostat:
		return plain
	case a == diagram.Radiator || b == diagram.Radiator:
		return main
	case h.Bore != diagram.BoreMain:
		return bypass
	}
	return plain
}
