package trial

import (
	"math"

	"loopbook/diagram"
)

// running is what the driver or the technician does.
type running struct {
	rpm, kmh, heatW float64
	heater          float64 // 0 off, 1 full
}

// state is the loop's temperatures and what its switches remember.
type state struct {
	headC, blockC, upperC, lowerC, waxC float64
	fanOn, freed                        bool
	trapped                             lock // as it lies just now
}

// flow is the coolant's capacity rates, watts per kelvin.
type flow struct{ radiator, bypass, heater float64 }

func (f flow) all() float64 { return f.radiator + f.bypass + f.heater }

const stepS = 1.0

// step moves the loop by stepS: the head takes the heat and gives it to the
// flow and the block; the hoses and the radiator follow at the pace of their
// flow.
func (v *car) step(s *state, r running) {
	f := v.flow(s, r)
	g := v.radiatorWK(s, r, f)
	cold := 1 + 0.3*clamp((60-s.headC)/60) // fast idle and thick oil
	heat := r.heatW*v.fault.heat*cold - v.coupleWK*(s.headC-s.blockC) - f.all()*(s.headC-v.inletC(s, r, f))
	s.headC += stepS * heat / v.headJK
	windWK := v.bodyWK * (1 + r.kmh/80)
	s.blockC += stepS * (v.coupleWK*(s.headC-s.blockC) - windWK*(s.blockC-v.airC)) / v.blockJK
	s.headC = min(s.headC, v.boilC)

	const upperJK, lowerJK, hoseWK = 3e3, 8e3, 3
	creeps := f.radiator
	if v.loop.Thermostat == diagram.Inlet {
		creeps += 2 // the upper hose is open to the engine and warms by convection
	}
	s.upperC = towards(s.upperC, v.airC+(s.headC-v.airC)*creeps/(creeps+hoseWK), creeps+hoseWK, upperJK)
	air := v.airC
	if r.kmh == 0 && !s.fanOn {
		air += 0.15 * (s.headC - v.airC) // a standing car breathes its own warmth
	}
	short := 0.2 * f.radiator / (f.radiator + 15) // what runs through the nearest tubes, hardly cooled
	out := air + (s.upperC-air)*(short+(1-short)*math.Exp(-g/max(f.radiator, 1)))
	s.lowerC = towards(s.lowerC, out, f.radiator+g, lowerJK)
	v.switches(s, r, f)
}

// towards is from, moved to the target as far as the flow takes the mass.
func towards(from, target, wattsPerK, joulesPerK float64) float64 {
	return target + (from-target)*math.Exp(-stepS*wattsPerK/joulesPerK)
}

// switches lets the wax and the fan's switch follow. At the outlet the
// wax stands in what leaves the engine, at the inlet between the bypass's stream
// and the mixture.
func (v *car) switches(s *state, r running, f flow) {
	feels := s.headC
	if v.loop.Thermostat == diagram.Inlet {
		feels = (s.headC + v.inletC(s, r, f)) / 2
	}
	s.waxC += stepS * (feels - s.waxC) / 12
	if s.waxC > v.ratedC+v.fault.sticksK {
		s.freed = true
	}
	at, on, off := v.sensorC(s), v.fanOnC, v.fanOffC
	if v.fan == "viscous" { // the clutch feels the air behind the radiator: FN6, FN7
		at, on, off = (s.upperC+s.lowerC)/2, 76, 66
	}
	s.fanOn = at > on || (s.fanOn && at > off)
	s.fanOn = s.fanOn || v.fault.fanStuckOn
}

// opening is the thermostat's, 0 to 1.
func (v *car) opening(s *state, r running) float64 {
	opens := v.opensC + v.fault.shiftK
	if v.loop.Heated() && !v.fault.heaterDead && r.kmh > 55 {
		opens -= 18 // under load the wax is heated: TH7
	}
	x := clamp((s.waxC - opens) / v.spanK)
	if v.fault.sticksK > 0 && !s.freed {
		x = 0
	}
	return min(max(x, v.fault.openLeast), v.fault.openMost)
}

// flow shares the pump's flow out by how readily each branch takes it.
func (v *car) flow(s *state, r running) flow {
	x := v.opening(s, r)
	f := flow{
		radiator: v.radiator * v.fault.tubes * (x + v.leak),
		bypass:   v.bypass * max(1-(1-v.bypassRest)*x, v.fault.bypass),
		heater:   v.heater * v.fault.core * (1 - s.trapped.heater),
	}
	if r.rpm > 2000 {
		f.radiator *= v.fault.collapse
	}
	if !v.blendDoor && r.heater == 0 {
		f.heater *= 0.02 // the valve is shut on purpose
	}
	if v.strength < 30 && v.airC < -6-0.3*v.strength {
		f.radiator *= 0.05 // slush in the core
	}
	thick := 1 - 0.5*max(0, (v.strength-55)/100)
	pump := v.pumpWK * math.Pow(r.rpm/800, 0.9) * v.fault.pump * (1 - s.trapped.pump) * thick
	all := f.all()
	share := pump / (all + 1) // the engine's own resistance is the 1
	return flow{f.radiator * share, f.bypass * share, f.heater * share}
}

// radiatorWK is the conductance from the coolant to the air: still air, fan
// and road wind on one side, the film in the tubes on the other.
func (v *car) radiatorWK(s *state, r running, f flow) float64 {
	air := v.stillWK*math.Sqrt(v.fault.air) + v.fanAir(s, r)*v.fault.air
	air += v.ramWK * math.Pow(r.kmh/80, 0.7) * v.fault.air
	film := (v.filmWK + 0.7*f.radiator) * (1 - 0.4*max(0, (v.strength-55)/45))
	return v.fault.face * (1 - s.trapped.face) / (1/air + 1/film)
}

func (v *car) fanAir(s *state, r running) float64 {
	switch {
	case v.fan != "viscous":
		if !s.fanOn {
			return 0
		}
		return v.fanWK * v.fault.fan
	case s.fanOn:
		return v.fanWK * v.fault.fan * math.Pow(r.rpm/1800, 0.7)
	}
	return 0.2 * v.fanWK * v.fault.fan * math.Pow(r.rpm/1800, 0.7) // drag of the cold clutch
}

// coreAirWK is what the heater core gives to the cabin's air.
func (v *car) coreAirWK(r running) float64 {
	air := max(2, v.blowerWK*r.heater*v.fault.blower*(1-v.fault.flap))
	return 1 / (1/(v.coreWK*v.fault.coreFace) + 1/air)
}

func (v *car) coreOutC(s *state, r running, f flow) float64 {
	return v.airC + (s.headC-v.airC)*math.Exp(-v.coreAirWK(r)/max(f.heater, 1))
}

// inletC is the mixture that goes into the engine.
func (v *car) inletC(s *state, r running, f flow) float64 {
	return (f.radiator*s.lowerC + f.bypass*s.headC + f.heater*v.coreOutC(s, r, f)) / max(f.all(), 1e-9)
}

// sensorC is what the sensor tells, without passing air.
func (v *car) sensorC(s *state) float64 {
	if !math.IsNaN(v.fault.sensorStuckC) {
		return v.fault.sensorStuckC
	}
	return s.headC + v.sensorK + v.fault.sensorK + v.fault.sensorSlope*(s.headC-20)
}

func clamp(x float64) float64 { return min(max(x, 0), 1) }
