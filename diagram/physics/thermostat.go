package physics

import "loopbook/diagram"

// RatingC is the parameter that holds the rating of a layout's thermostat: where
// it begins to open, without help from a heater.
func (p *Params) RatingC(l *diagram.Loop) *float64 {
	switch {
	case l.Heated():
		return &p.HeatedRatingC
	case l.Thermostat == diagram.Inlet:
		return &p.InletRatingC
	}
	return &p.OutletRatingC
}

// valve is a thermostat with what may be wrong with it.
type valve struct {
	opensC, spanK, playK float64
	least, most          float64 // lift that it can't go under and over
	sticksK              float64 // over its rating, until it has let go; 0: it moves
	melt                 float64 // how far the wax has pushed, 0 to 1
	sense, wax           int     // rows of what the wax feels and of the wax
}

// fitValves puts the layout's thermostats in: the loop's, and the block's where
// that has its own. What a fault says is of the first; the block's is sound.
func (s *Sim) fitValves(l *diagram.Loop) {
	opensC := *s.p.RatingC(l)
	for i, sense := range s.c.senses {
		v := valve{opensC: opensC, spanK: s.p.OpenSpanK, playK: s.p.WaxPlayK, most: 1, sense: sense, wax: s.waxRow + i}
		if i == 0 {
			v.opensC, v.least, v.most, v.sticksK = opensC+s.f.opensK, s.f.least, s.f.most, s.f.sticksK
		} else {
			v.opensC += s.p.BlockOverHeadK
		}
		s.valves = append(s.valves, v)
	}
	s.heated = l.Heated()
	if s.heated {
		s.p.FanOnC = max(s.p.FanOnC, opensC+fanOverK)
	}
}

// fanOverK is how far over a hot rating the fan starts at least, K (common practice): above what
// the thermostat lets the engine have at light load, so that it doesn't run there.
const fanOverK = 10

// heatWax tells by how much the heater warms the wax over its coolant, K. The
// engine's control has it on under load: halfway between what 2500 rpm without
// load and a steady road make, and above. A driver that doesn't let go has it on always.
func (s *Sim) heatWax(st Stage) float64 {
	if s.heated && (s.f.heats || st.HeatKW > (s.p.RaisedHeatKW+s.p.RoadHeatKW)/2) {
		return s.p.WaxHeaterK
	}
	return 0
}

// move takes the valve to where the wax at c pushes it. On the way up it
// follows the wax; on the way down only once the wax has lost its play. One that
// sticks stays shut until the wax has pushed it free.
func (v *valve) move(c float64) {
	if v.sticksK > 0 && c < v.opensC+v.sticksK {
		return
	}
	v.sticksK = 0
	up := (c - v.opensC) / v.spanK
	down := up + v.playK/v.spanK
	v.melt = min(max(min(max(v.melt, up), down), 0), 1)
}

// lift is how far the valve is open. Wax melts over a range of temperatures, the
// most in the middle of it, so the ends are gentle.
func (v *valve) lift() float64 {
	x := v.melt
	return min(max(x*x*(3-2*x), v.least), v.most)
}
