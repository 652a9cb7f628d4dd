package physics

import "loopbook/diagram"

// rating is where the thermostat of that side begins to open, °C.
func (p Params) rating(side diagram.Side) float64 {
	if side == diagram.Inlet {
		return p.InletRatingC
	}
	return p.OutletRatingC
}

// valve is a thermostat with what may be wrong with it.
type valve struct {
	opensC, spanK, playK float64
	least, most          float64 // lift that it can't go under and over
	melt                 float64 // how far the wax has pushed, 0 to 1
}

// move takes the valve to where the wax at c pushes it. On the way up it
// follows the wax; on the way down only once the wax has lost its play.
func (v *valve) move(c float64) {
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
