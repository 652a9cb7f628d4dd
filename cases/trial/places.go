package trial

import "loopbook/diagram"

// coolantC is the coolant's temperature at a hose point, or the air's at an
// air point. A hose without flow lies between its warm end and the air around.
func (m *morning) coolantC(p diagram.Point, r running) float64 {
	s, f := &m.state, m.flow(&m.state, r)
	around := m.aroundC()
	still := func(warm, flow, least float64) float64 { // least: part that creeps along without flow
		return around + (warm-around)*(least+(1-least)*flow/(flow+4))
	}
	inlet := m.loop.Thermostat == diagram.Inlet
	switch p {
	case diagram.Housing:
		if inlet {
			return 0.8*m.inletC(s, r, f) + 0.2*s.lowerC
		}
		return s.headC
	case diagram.EngineOut:
		if inlet {
			return s.headC - m.trapped.crownK
		}
		return s.upperC + (s.headC-s.upperC)*(f.radiator+1)/(f.radiator+8) - m.trapped.crownK
	case diagram.RadIn:
		return s.upperC
	case diagram.RadOut:
		return s.lowerC
	case diagram.PumpIn:
		return s.lowerC + 0.15*(s.headC-s.lowerC)*4/(f.radiator+4)
	case diagram.Bypass:
		return still(s.headC, f.bypass, 0.5)
	case diagram.HeaterIn:
		return still(s.headC, f.heater, m.creeps())
	case diagram.HeaterOut:
		return still(m.coreOutC(s, r, f), f.heater, 0.2)
	case diagram.BottleBleed:
		return still(s.upperC, 6*m.fullness(), 0.1)
	case diagram.BottleOut:
		return around + 0.4*m.fullness()*(s.upperC-around)
	case diagram.OilIn:
		return s.headC
	case diagram.OilOut:
		return s.headC + 2 - 0.3*(s.headC-s.blockC) // the oil follows the block
	}
	return m.airAtC(p, r, f)
}

// aroundC is the air under the bonnet.
func (m *morning) aroundC() float64 { return m.state.airUnder(m.airC) }

func (s *state) airUnder(outside float64) float64 { return outside + 0.2*(s.headC-outside) }

// creeps is how warm the heater supply is without flow: a shut valve before
// the measured place leaves it cold, one behind it or a full core doesn't.
func (m *morning) creeps() float64 {
	if m.fault.valve == "before" {
		return 0.15
	}
	return 0.75
}

// fullness is the bottle's: a low one gets little over the bleed line.
func (m *morning) fullness() float64 {
	switch m.fault.level {
	case "empty":
		return 0
	case "low":
		return 0.4
	}
	return 1
}

// airAtC is the air's temperature by a probe.
func (m *morning) airAtC(p diagram.Point, r running, f flow) float64 {
	s := &m.state
	warm := (s.upperC + s.lowerC) / 2
	switch p {
	case diagram.AirOff:
		passing := (m.stillWK + m.fanAir(s, r)) * m.fault.air
		return m.airC + (warm-m.airC)*m.radiatorWK(s, r, f)/(1.5*passing+1)
	case diagram.Vent:
		if r.heater == 0 || m.fault.blower < 0.05 {
			return m.airC + 3
		}
		supply := m.coolantC(diagram.HeaterIn, r)
		through := supply - m.coolantC(diagram.HeaterOut, r)
		air := m.blowerWK * r.heater * m.fault.blower * (1 - m.fault.flap)
		rise := min(f.heater*max(through, 0)/air, 0.95*(supply-m.airC))
		duct := 1.1 * m.fault.blower / (m.fault.blower + 0.1) // a trickle cools on its way
		return m.airC + max(rise, 0)*(1-m.fault.flap)*duct
	}
	return m.airC + 0.02*(warm-m.airC) // before the radiator
}
