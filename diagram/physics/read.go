package physics

import "loopbook/diagram"

// Seconds is the time since the cold start.
func (s *Sim) Seconds() float64 { return s.in.T }

// ECT is what the sensor shows: the coolant that leaves the engine, or its head,
// and the sensor's fault.
func (s *Sim) ECT() diagram.Celsius { return s.SensorAt(diagram.Celsius(s.leavingC())) }

// leavingC is the coolant that leaves the engine, or its head.
func (s *Sim) leavingC() float64 { return s.in.Y[s.c.parts[s.c.engines[0]].lump] }

// At is the temperature of the coolant, or the air, at a point. It reports
// false where the layout has no such point.
func (s *Sim) At(p diagram.Point) (diagram.Celsius, bool) {
	switch {
	case p == diagram.AirOn:
		return diagram.Celsius(s.ambient), true
	case p == diagram.AirOff:
		return s.airBehind(s.c.rad, s.radKW, s.airKgS(s.stage)), true
	case p == diagram.Vent && s.c.heater >= 0:
		// what a bad flap leads past the core mixes in again
		duct := s.p.DuctPart * (s.leavingC() - s.ambient)
		return s.airBehind(s.c.heater, s.cabKW, s.p.BlowerKgS*s.stage.Blower) + diagram.Celsius(duct), true
	}
	lump, ok := s.c.points[p]
	if !ok {
		return 0, false
	}
	c := s.in.Y[lump]
	if p == diagram.Housing && s.c.cold >= 0 {
		c += s.p.HousingColdPart * (s.in.Y[s.c.cold] - c)
	}
	return diagram.Celsius(c), true
}

// airBehind is ambient and what an exchanger gave to its air.
func (s *Sim) airBehind(part int, kwk, air float64) diagram.Celsius {
	q, in := 0.0, 0.0 // L/s, and that times °C
	for hose := range s.c.hoses {
		ls, from := s.inflow(part, hose)
		q, in = q+ls, in+ls*s.in.Y[from]
	}
	if !(q > 0) || !(air > 0) {
		return diagram.Celsius(s.ambient)
	}
	return diagram.Celsius(s.ambient + kwk*(in/q-s.ambient)/(air*airHeatKJKgK))
}

// Lift is how far the thermostat, or the head's, is open, 0 to 1.
func (s *Sim) Lift() float64 { return s.valves[0].lift() }

// FanRuns reports whether the fan does.
func (s *Sim) FanRuns() bool { return s.fan }

// Boils reports whether the coolant in the engine is at its boiling point.
func (s *Sim) Boils() bool {
	for _, engine := range s.c.engines {
		if s.in.Y[s.c.parts[engine].lump] >= s.boilC {
			return true
		}
	}
	return false
}

// FlowLS is the coolant through the engine, L/s.
func (s *Sim) FlowLS() float64 {
	sum := 0.0
	for _, engine := range s.c.engines {
		sum += s.through(engine)
	}
	return sum
}
