package physics

import (
	"math"

	"loopbook/diagram"
	"loopbook/diagram/physics/network"
)

// ratedRPM is the engine speed that the pump's parameters stand for.
const ratedRPM = 3000

// solveFlow sets every branch for the engine's speed and the valve's lift,
// and solves the network.
func (s *Sim) solveFlow(rpm float64) error {
	pump := network.Pump{ShutOffKPa: s.p.PumpShutOffKPa, Drop: s.p.PumpDrop, RatedRPM: ratedRPM}
	rise, drop := pump.At(rpm)
	for i, h := range s.c.hoses {
		b := &s.c.net.Branches[i]
		b.Resistance = s.hoseDrop(h) + s.entryDrop(h.to)
		b.RiseKPa = 0
		switch {
		case h.from == s.c.pump:
			b.RiseKPa, b.Resistance = rise, b.Resistance+drop
		case h.role == main:
			b.Resistance += network.Valve(s.p.ThermostatDrop, s.valves[h.valve].lift(), s.p.MainLeak)
		}
		if h.from == s.c.rad && h.bore == diagram.BoreMain {
			b.Resistance += s.suckedFlat(rpm)
		}
	}
	return s.c.net.Solve()
}

func (s *Sim) hoseDrop(h hose) float64 {
	switch {
	case h.role == bypass:
		open := max(1-s.valves[h.valve].lift(), s.f.bypassStays)
		return network.Valve(s.p.BypassDrop, open, s.p.BypassLeak)
	case h.bore == diagram.BoreHeater: // half of the heater's line, or an open bypass's hose
		return 5
	case h.bore == diagram.BoreFeed:
		return s.p.FeedDrop
	case h.bore == diagram.BoreBleed:
		return s.p.BleedDrop
	}
	return s.p.MainHoseDrop
}

// entryDrop is the resistance of the part that a hose leads into.
func (s *Sim) entryDrop(part int) float64 {
	switch kind := s.c.parts[part].kind; kind {
	case diagram.Engine, diagram.Head, diagram.Block:
		share := s.heatShare(kind) // of the passages too, so that both together are the engine
		return s.p.EngineDrop / (share * share)
	case diagram.Radiator:
		return s.p.RadiatorDrop
	case diagram.HeaterCore:
		if s.stage.HeaterShut {
			return shutDrop
		}
		return s.p.HeaterDrop
	case diagram.OilCooler:
		return s.p.OilCoolerDrop
	}
	return 0
}

// A heater's valve that is shut: its resistance, kPa/(L/s)², and what warm coolant
// that rises as far as the valve brings into the supply before it, W/K (judgement).
const (
	shutDrop             = 1e10
	shutSupplyWK float64 = 15
)

// suckedFlat is what a soft lower hose adds: it gives way to the pump's
// suction, which goes with the square of the speed, and the flatter it is the more steeply
// its resistance rises: at idle it hardly shows (F10; the power is judgement).
func (s *Sim) suckedFlat(rpm float64) float64 {
	if s.f.softHose == 0 {
		return 0
	}
	return s.f.softHose * math.Pow(rpm/ratedRPM, 6)
}
