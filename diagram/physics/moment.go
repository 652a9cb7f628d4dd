package physics

import "slices"

// Moment is where a car stands on its way.
type Moment struct {
	seconds float64
	y       []float64
	valves  []valve
	fan     bool
	stage   Stage
}

// Moment notes where the car stands, to come back to it with Return.
func (s *Sim) Moment() Moment {
	return Moment{s.in.T, slices.Clone(s.in.Y), slices.Clone(s.valves), s.fan, s.stage}
}

// Return takes the car back to a moment of its own, as often as one likes: from
// there it can be run another way.
func (s *Sim) Return(m Moment) {
	s.in.T, s.fan, s.stage = m.seconds, m.fan, m.stage
	copy(s.in.Y, m.y)
	copy(s.valves, m.valves)
}
