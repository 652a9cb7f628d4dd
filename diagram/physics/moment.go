package physics

import "slices"

// Moment is where a car stands on its way.
type Moment struct {
	seconds      float64
	y            []float64
	valves       []valve
	fan          bool
	stage        Stage
	radKW, cabKW float64   // by which the air behind the exchangers is read
	flowLS       []float64 // where the next solution of the network starts
}

// Moment notes where the car stands, to come back to it with Return.
func (s *Sim) Moment() Moment {
	return Moment{s.in.T, slices.Clone(s.in.Y), slices.Clone(s.valves), s.fan, s.stage,
		s.radKW, s.cabKW, slices.Clone(s.c.net.FlowLS)}
}

// Return takes the car back to a moment of its own, as often as one likes: from
// there it can be run another way.
func (s *Sim) Return(m Moment) {
	s.in.T, s.fan, s.stage, s.radKW, s.cabKW = m.seconds, m.fan, m.stage, m.radKW, m.cabKW
	copy(s.in.Y, m.y)
	copy(s.valves, m.valves)
	copy(s.c.net.FlowLS, m.flowLS)
}
