package physics

import (
	"math"

	"loopbook/diagram"
	"loopbook/diagram/physics/exchanger"
)

const (
	airHeatKJKgK = 1.006 // of air at 20 to 50 °C, kJ/(kg K)
	refAirKgS    = 1.2   // at which RadiatorUAWK stands
	refFlowLS    = 1.5   // at which RadiatorUAWK and EngineUAWK stand
	refRiseK     = 50    // at which RisingWK stands
	boilKWK      = 5     // heat that steam takes for each kelvin over the boiling point
)

// assemble writes the heat balance of all lumps, dy/dt = a·y + b, for the flows
// as they are. Temperatures are °C, capacities kJ/K, conductances kW/K. The rows
// after the lumps are the metal of the engine, or of head and block, the wax of
// each thermostat, and the heat taken in less the heat given off, in kJ.
func (s *Sim) assemble(st Stage) {
	clear(s.a)
	clear(s.b)
	s.advect()
	s.burn(st)
	s.radiate(st)
	s.heatCabin(st)
	for _, v := range s.valves {
		s.set(v.wax, v.sense, 1/s.p.WaxLagS)
		s.set(v.wax, v.wax, -1/s.p.WaxLagS)
	}
	s.b[s.waxRow] += s.heatWax(st) / s.p.WaxLagS // of a few watts, which the coolant doesn't feel
}

// burn warms the engine's metal, its oil where coolant cools that, and by them the
// coolant, which boils away what it gets over its boiling point.
func (s *Sim) burn(st Stage) {
	heat := st.HeatKW * s.coldness()
	if s.c.cooler >= 0 {
		s.gain(s.c.oil, heat*s.p.OilHeatShare)
		s.exchange(s.c.oil, s.c.parts[s.c.cooler].lump, s.p.OilUAWK/1000)
		heat *= 1 - s.p.OilHeatShare
	}
	loss := (s.p.EngineLossWK + s.p.EngineRamWK*st.SpeedKmh) / 1000
	for i, engine := range s.c.engines {
		part, metal := s.c.parts[engine], s.metal+i
		s.lose(metal, metal, loss*s.metalShare(part.kind), s.ambient)
		s.gain(metal, heat*s.heatShare(part.kind))
		s.exchange(metal, part.lump, s.engineUA(engine))
		if s.in.Y[part.lump] > s.boilC {
			s.lose(part.lump, part.lump, boilKWK, s.boilC)
		}
	}
	if len(s.c.engines) > 1 {
		s.exchange(s.metal, s.metal+1, s.p.HeadBlockWK/1000)
	}
	s.gain(s.c.parts[s.c.engines[0]].lump, s.f.gasKW*st.RPM/ratedRPM)
}

// heatShare is the part of the engine's heat that its halves make.
func (s *Sim) heatShare(kind diagram.PartKind) float64 { return half(kind, s.p.HeadHeatShare) }

// metalShare is the part of the engine's metal and water that its halves have.
func (s *Sim) metalShare(kind diagram.PartKind) float64 { return half(kind, s.p.HeadMetalShare) }

func half(kind diagram.PartKind, head float64) float64 {
	switch kind {
	case diagram.Head:
		return head
	case diagram.Block:
		return 1 - head
	}
	return 1
}

// coldness is by how much a cold engine makes more heat than a warm one.
func (s *Sim) coldness() float64 {
	return 1 + s.p.ColdExtra*max(1-s.in.Y[s.metal]/70, 0)
}

func (s *Sim) set(row, col int, x float64) { s.a[row*s.n+col] += x }

// gain gives kw to a lump.
func (s *Sim) gain(lump int, kw float64) {
	s.b[lump] += kw / s.cap[lump]
	s.b[s.account] += kw
}

// lose takes kwk for each kelvin of lump at over c out of lump.
func (s *Sim) lose(lump, at int, kwk, c float64) {
	s.set(lump, at, -kwk/s.cap[lump])
	s.b[lump] += kwk * c / s.cap[lump]
	s.set(s.account, at, -kwk)
	s.b[s.account] += kwk * c
}

// exchange lets heat pass between two lumps either way.
func (s *Sim) exchange(i, j int, kwk float64) {
	s.carry(i, j, kwk)
	s.carry(j, i, kwk)
}

// carry brings a lump towards what flows in, kwk in kW/K.
func (s *Sim) carry(into, from int, kwk float64) {
	s.set(into, from, kwk/s.cap[into])
	s.set(into, into, -kwk/s.cap[into])
}

// advect carries heat along the hoses, whichever way they flow, with their
// losses, and what creeps along them without flow.
func (s *Sim) advect() {
	for i, h := range s.c.hoses {
		q := s.c.net.FlowLS[i] * s.heatKJLK
		from, to := s.c.parts[h.from].lump, s.c.parts[h.to].lump
		first, last := h.lump, h.last
		if q < 0 {
			q, from, to, first, last = -q, to, from, last, first
		}
		hot := 0.0 // of what leaves, from before the core
		if h.bore == diagram.BoreBleed && from == s.c.parts[s.c.rad].lump {
			hot = min(q, s.bled())
			s.carry(first, s.c.hotTank, hot)
		}
		s.carry(first, from, q-hot)
		if first != last {
			s.carry(last, first, q)
		}
		if to == s.c.parts[s.c.rad].lump && last == s.c.hotTank {
			q -= s.bled()
		}
		s.carry(to, last, q)
		s.creep(h)
		loss := s.p.ThinHoseLossWK / 1000
		if h.bore == diagram.BoreMain {
			loss = s.p.MainHoseLossWK / 1000
		}
		if first == last {
			s.lose(first, first, loss, s.ambient)
			continue
		}
		s.lose(first, first, loss/2, s.ambient)
		s.lose(last, last, loss/2, s.ambient)
	}
}

// bled is what leaves the radiator's hot tank by its bleed line, kW/K: it passes
// by the core, as far as the tank is fed.
func (s *Sim) bled() float64 {
	fed, bled := 0.0, 0.0
	for i, h := range s.c.hoses {
		q := s.c.net.FlowLS[i]
		switch {
		case h.last == s.c.hotTank:
			fed = max(q, 0)
		case h.bore == diagram.BoreBleed && h.from == s.c.rad:
			bled = max(q, 0)
		}
	}
	return min(fed, bled) * s.heatKJLK
}

// creep is what a hose takes from its ends without flow: by its wall and necks,
// and in an open main hose by warm coolant that rises into it while cold coolant
// sinks back under it. A part's coolant leaves at its top, so this goes forward
// only; the radiator's leaves at its cold end, and a thermostat's plate stops it.
func (s *Sim) creep(h hose) {
	from, to := s.c.parts[h.from].lump, s.c.parts[h.to].lump
	wall, rises := s.p.DeadLegWK/4000, false
	if h.bore == diagram.BoreMain {
		wall, rises = s.p.DeadLegWK/1000, h.role != main && h.from != s.c.rad
	}
	if h.to == s.c.heater {
		wall += s.f.supplyWK / 1000
		if s.stage.HeaterShut {
			wall += shutSupplyWK / 1000
		}
	}
	s.exchange(from, h.lump, wall+s.rising(rises, from, h.lump))
	if h.lump != h.last {
		s.exchange(h.lump, h.last, wall+s.rising(rises, h.lump, h.last))
	}
	s.exchange(h.last, to, wall+s.rising(rises, h.last, to))
}

// rising is the conductance of warm coolant that rises forward, kW/K. Its speed
// goes with the root of the difference, as a current's of a heavier liquid
// under a lighter one does.
func (s *Sim) rising(open bool, from, to int) float64 {
	over := s.in.Y[from] - s.in.Y[to]
	if !open || !(over > 0) {
		return 0
	}
	return s.p.RisingWK / 1000 * math.Sqrt(over/refRiseK)
}

// engineUA is the metal's conductance to the coolant, kW/K, with the power 0.8
// of the flow that turbulent flow in a pipe has (Dittus and Boelter), over a
// least that boiling spots and free convection keep.
func (s *Sim) engineUA(engine int) float64 {
	q, share := s.through(engine), s.heatShare(s.c.parts[engine].kind)
	return share * s.p.EngineUAWK / 1000 * (0.2 + 0.8*math.Pow(q/share/refFlowLS, 0.8))
}

// inflow is the flow that a hose brings into a part, L/s, and the lump that it
// comes from; 0 where it brings none.
func (s *Sim) inflow(part, hose int) (ls float64, from int) {
	h, q := &s.c.hoses[hose], s.c.net.FlowLS[hose]
	switch {
	case h.to == part && q > 0:
		return q, h.last
	case h.from == part && q < 0:
		return -q, h.lump
	}
	return 0, 0
}

// through is the flow into a part, L/s.
func (s *Sim) through(part int) float64 {
	sum := 0.0
	for hose := range s.c.hoses {
		ls, _ := s.inflow(part, hose)
		sum += ls
	}
	return sum
}

func (s *Sim) radiate(st Stage) {
	air, q := s.airKgS(st), s.through(s.c.rad)-s.bled()/s.heatKJLK
	airSide := math.Pow(air/refAirKgS, 0.6) // fins and louvres
	coolantSide := math.Pow(max(q, 1e-6)/refFlowLS, 0.5)
	// an air side of 1.25 and a coolant side of 5 times the whole, at the rating
	ua := s.p.RadiatorUAWK / 1000 / (0.8/airSide + 0.2/coolantSide)
	s.radKW = s.pass(s.c.rad, ua, air*airHeatKJKgK, q)
	rad := s.c.parts[s.c.rad].lump
	s.lose(rad, rad, s.p.RadiatorStillWK/1000, s.ambient)
}

func (s *Sim) heatCabin(st Stage) {
	s.cabKW = 0
	if s.c.heater < 0 {
		return
	}
	air := s.p.BlowerKgS * st.Blower * (1 - s.f.cabinBlocked)
	q := s.through(s.c.heater)
	ua := s.p.HeaterUAWK / 1000 * math.Pow(max(st.Blower, 1e-6), 0.3)
	s.cabKW = s.pass(s.c.heater, ua, air*airHeatKJKgK, q)
}

// pass takes the heat of a cross-flow exchanger out of a part, by effectiveness
// from where its coolant comes in, and is the conductance in kW/K of that
// difference. The lump is what leaves it.
func (s *Sim) pass(part int, ua, air, q float64) float64 {
	kwk := exchanger.Conductance(ua, q*s.heatKJLK, air)
	for hose := range s.c.hoses {
		ls, from := s.inflow(part, hose)
		if ls > 0 && from == s.c.hotTank {
			ls -= s.bled() / s.heatKJLK
		}
		if ls > 0 {
			s.lose(s.c.parts[part].lump, from, kwk*ls/q, s.ambient)
		}
	}
	return kwk
}
