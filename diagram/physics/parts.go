package physics

import "loopbook/diagram"

// What single parts of the car do, apart from any drive: as they show on a bench or
// to a tester.

// SensorAt is what the sensor shows in coolant at c.
func (s *Sim) SensorAt(c diagram.Celsius) diagram.Celsius {
	if s.f.sensorStuckC != 0 {
		return diagram.Celsius(s.f.sensorStuckC)
	}
	return c + diagram.Celsius(s.f.sensorK+s.f.sensorSlope*(float64(c)-s.ambient))
}

// LiftIn is how far the thermostat opens in water that was slowly warmed to c, its
// heater off, 0 to 1.
func (s *Sim) LiftIn(c diagram.Celsius) float64 {
	v := s.valves[0]
	v.melt, v.sticksK = 0, s.f.sticksK
	v.move(float64(c))
	return v.lift()
}

// CapKPa is the pressure that the loop holds, over the air outside.
func (s *Sim) CapKPa() diagram.KPa { return diagram.KPa(s.p.CapKPa) }

// FanStartsC is what the sensor shows when the engine's control starts the fan.
func (s *Sim) FanStartsC() diagram.Celsius { return diagram.Celsius(s.p.FanOnC) }

// FanObeys reports whether a fan that the engine's control turns does what it is told.
func (s *Sim) FanObeys(told bool) bool { return told && !s.f.fanOff || !told && !s.f.fanStuck }

// HeaterLS is the coolant through the heater core, L/s.
func (s *Sim) HeaterLS() float64 {
	if s.c.heater < 0 {
		return 0
	}
	return s.through(s.c.heater)
}
