package evidence

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// pairErrorK is the error of a difference of two readings: each repeats to 3 K
// (IR9, common practice), so 3 times the root of two.
const pairErrorK diagram.DeltaK = 4.2

// downhill lists pairs of which the second can't be hotter than the first,
// whatever is at fault.
func (m *moment) downhill() [][2]diagram.Point {
	pairs := [][2]diagram.Point{
		{diagram.EngineOut, diagram.RadIn},
		{diagram.RadIn, diagram.RadOut},
		{diagram.RadOut, diagram.PumpIn},
		{diagram.HeaterIn, diagram.HeaterOut},
		{diagram.AirOff, diagram.AirOn},
	}
	if m.side() == diagram.Outlet {
		pairs = append(pairs, [2]diagram.Point{diagram.Housing, diagram.EngineOut})
	}
	return pairs
}

// markImpossible takes both readings of a pair that contradicts itself out of
// the play: which of them is wrong isn't known.
func (m *moment) markImpossible() {
	for _, pair := range m.downhill() {
		a, okA := m.readings[pair[0]]
		b, okB := m.readings[pair[1]]
		if !okA || !okB || a.Doubtful || b.Doubtful || b.Point == m.hotAir {
			continue
		}
		if over := b.TrueC.Minus(a.TrueC); over > pairError(a, b)+m.creeps(pair) {
			key := "because.hotter"
			if pair[1].Air() {
				key = "because.air-colder" // the air comes from the second place to the first
			}
			m.mark(pair, say.Of(key, say.Place(pair[1]), b.TrueC, over, say.Place(pair[0]), a.TrueC))
		}
	}
}

// A day may be so hot, and the air before the radiator so much hotter still: off a condenser, or come round again from
// behind it (both judgement).
const (
	hottestDayC diagram.Celsius = 50
	roundAgainK diagram.DeltaK  = 30
)

// markHotAir takes air before the radiator out of the play that can't have come in from outside.
func (m *moment) markHotAir() {
	outside, by := hottestDayC, "because.air-hot-any"
	if a := m.c.Ambient(m.i); a != nil {
		outside, by = *a, "because.air-hot"
	}
	air, ok := m.readings[diagram.AirOn]
	if over := air.TrueC.Minus(outside); ok && over > roundAgainK {
		air.Impossible, air.Why = true, say.Of(by, say.Place(diagram.AirOn), air.TrueC, over, outside)
		m.readings[diagram.AirOn], m.hotAir = air, diagram.AirOn
	}
}

// creeps is by how much still coolant may be warmer at the pair's second place: the lower hose takes
// warmth from the pump it ends at, and more from the housing of a shut inlet thermostat; the more the
// hotter the engine is, where the radiator's end shows that nothing comes (judgement).
func (m *moment) creeps(pair [2]diagram.Point) diagram.DeltaK {
	if pair[1] != diagram.PumpIn {
		return 0
	}
	least := diagram.DeltaK(10)
	if m.side() == diagram.Inlet {
		least = 18
	}
	end := m.readings[pair[0]]
	if hottest, ok := m.mostC(); ok && m.asCold(end) {
		return max(least, hottest.Minus(end.TrueC)/4)
	}
	return least
}

func (m *moment) mark(pair [2]diagram.Point, why say.Text) {
	for _, p := range pair {
		r := m.readings[p]
		r.Impossible, r.Why = true, why
		m.readings[p] = r
	}
}

// markAlone takes a hot reading out of the play that only the scan tool's value
// and the rest of the engine's side speak against, so that one slip of the gun
// doesn't make the sensor a liar.
func (m *moment) markAlone() {
	hot, ok := m.hottest(engineSide()...)
	if !ok || m.round.EctC == nil || hot.TrueC.Minus(*m.round.EctC) <= sensorFailK {
		return
	}
	agree := 0
	for _, p := range engineSide() {
		r, usable := m.at(p)
		if !usable || p == hot.Point {
			continue
		}
		if hot.TrueC.Minus(r.TrueC) <= sensorFailK {
			return
		}
		if m.agrees(r) {
			agree++
		}
	}
	if agree >= 2 {
		hot.Impossible = true
		hot.Why = say.Of("because.alone", say.Place(hot.Point), hot.TrueC, *m.round.EctC, agree)
		m.readings[hot.Point], m.alone = hot, hot.Point
	}
}

// agrees reports whether the reading stands for the engine, and the sensor's
// value with it.
func (m *moment) agrees(r Reading) bool {
	return r.Point != diagram.RadIn && !m.still(r) && abs(m.round.EctC.Minus(r.TrueC)) <= sensorFailK
}

// pairError grows where the surfaces differ: on like surfaces the error of the
// emissivity is common to both and falls out.
func pairError(a, b Reading) diagram.DeltaK {
	if a.Surface == b.Surface {
		return pairErrorK
	}
	return pairErrorK + a.UncertainK + b.UncertainK
}
