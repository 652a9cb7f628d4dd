// Package physics simulates a cooling loop, healthy or with a fault: what each
// point of a layout would show, from a cold start on.
//
// The loop is built from the layout's data. Flows are those of a network of
// quadratic resistances; heat sits in lumps of coolant and metal, travels with
// the flow and leaves by radiator, heater core and surfaces. Flows, fan and
// valve are looked at every few seconds; between two looks the heat balance is
// linear and is integrated implicitly.
//
// It is a model of a car of ordinary build, good to several kelvins and no better:
// whoever compares it with a car has to allow for that. Oil that no coolant
// cools, cold friction, stratified tanks and the hood's own warmth are left out.
package physics

import (
	"errors"
	"fmt"
	"math"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics/stiff"
)

// Conditions are what lies outside the car's build.
type Conditions struct {
	AmbientC  diagram.Celsius
	AltitudeM diagram.Metre
	Coolant   coolant.Mixture
	Fan       FanKind
	FanSwitch bool // an electric fan goes by a switch of its own and not by the engine's sensor
}

// ErrFan is wrapped when the conditions name an unknown kind of fan.
var ErrFan = errors.New("unknown kind of fan")

// Sim is one car on its way. It serves one goroutine at a time.
type Sim struct {
	c        *circuit
	p        Params
	f        faulty
	valves   []valve
	heated   bool // the first one's wax
	kind     FanKind
	switched bool // the fan, by itself
	fan      bool
	ambient  float64
	boilC    float64
	heatKJLK float64 // of a litre of coolant

	in      *stiff.Integrator
	n       int
	metal   int // the first rows after the lumps of each kind
	waxRow  int
	account int
	cap     []float64 // kJ/K of each lump and of the metal
	a, b    []float64
	radKW   float64 // conductances of the exchangers, kW/K
	cabKW   float64
	stage   Stage
	hurry   bool
}

// New is a car of that layout which has stood overnight. A condition outside
// what coolant knows, or an unknown cause, is an error.
func New(l *diagram.Loop, healthy Params, f Fault, cond Conditions) (*Sim, error) {
	p, x, err := f.on(healthy)
	if err != nil {
		return nil, err
	}
	c, err := newCircuit(l)
	if err != nil {
		return nil, err
	}
	warm, err := cond.Coolant.At(80)
	if err != nil {
		return nil, err
	}
	boil, err := cond.Coolant.BoilUnderCapC(diagram.KPa(p.CapKPa), cond.AltitudeM)
	if err != nil {
		return nil, err
	}
	if !(cond.AmbientC >= -40 && cond.AmbientC <= 60) {
		return nil, fmt.Errorf("ambient %g °C: %w", float64(cond.AmbientC), coolant.ErrRange)
	}
	switch cond.Fan {
	case "", ElectricFan, ViscousFan, FixedFan, NoFan:
	default:
		return nil, fmt.Errorf("fan %q: %w", cond.Fan, ErrFan)
	}
	s := &Sim{
		c: c, p: p, f: x, kind: cond.Fan, switched: cond.FanSwitch,
		ambient: float64(cond.AmbientC), boilC: float64(boil),
		heatKJLK: warm.DensityKgM3 * warm.HeatJKgK / 1e6,
		metal:    c.lumps,
	}
	s.waxRow = s.metal + len(c.engines)
	s.account = s.waxRow + len(c.valves)
	s.n = s.account + 1
	s.fitValves(l)
	s.prepare()
	return s, nil
}

// prepare makes the room for the heat balance, all at ambient.
func (s *Sim) prepare() {
	s.a, s.b = make([]float64, s.n*s.n), make([]float64, s.n)
	s.cap = make([]float64, s.n)
	s.capacities()
	y := make([]float64, s.n)
	for i := range y[:s.account] {
		y[i] = s.ambient
	}
	s.in = stiff.New(stiff.System{F: s.balance, Jacobian: s.jacobian}, y)
	s.in.Rel = 0
	for i := range s.in.Abs {
		s.in.Abs[i] = 0.02 // K by step
	}
	s.in.Abs[s.account] = math.Inf(1) // an account of the others
}

func (s *Sim) balance(y, dydt []float64) {
	for i := range dydt {
		sum := s.b[i]
		for j, a := range s.a[i*s.n : i*s.n+s.n] {
			sum += a * y[j]
		}
		dydt[i] = sum
	}
}

func (s *Sim) jacobian(_, jac []float64) { copy(jac, s.a) }

// capacities sets the heat that each lump holds, kJ/K.
func (s *Sim) capacities() {
	for i, engine := range s.c.engines {
		s.cap[s.metal+i] = s.p.EngineMetalKJK * s.metalShare(s.c.parts[engine].kind)
	}
	if s.c.cooler >= 0 {
		s.cap[s.c.oil] = s.p.OilKJK
	}
	for _, p := range s.c.parts {
		litres, metal := 0.15, 0.2 // a housing or a tee
		switch p.kind {
		case diagram.Engine, diagram.Head, diagram.Block:
			litres, metal = s.p.EngineWaterL*s.metalShare(p.kind), 0
		case diagram.Radiator:
			litres, metal = s.p.RadiatorWaterL, s.p.RadiatorMetalKJK
		case diagram.HeaterCore:
			litres, metal = s.p.HeaterWaterL, 0.5
		case diagram.OilCooler:
			litres, metal = 0.3, 0.8
		case diagram.Bottle:
			litres, metal = 1.2, 0.5
		}
		s.cap[p.lump] = litres*s.heatKJLK + metal
	}
	for _, h := range s.c.hoses {
		litres := s.p.ThinHoseWaterL
		if h.bore == diagram.BoreMain {
			litres = s.p.MainHoseWaterL
		}
		each := 1.3 * litres * s.heatKJLK // with its rubber
		if h.lump != h.last {
			each /= 2
		}
		s.cap[h.lump], s.cap[h.last] = each, each
	}
}

// Run carries the car through a stage and calls each, if not nil, after every
// few seconds.
func (s *Sim) Run(st Stage, each func(*Sim)) error {
	for end := s.in.T + st.Seconds; s.in.T < end; {
		s.control(st)
		s.stage = st
		if err := s.solveFlow(st.RPM); err != nil {
			return fmt.Errorf("at %.0f s: %w", s.in.T, err)
		}
		s.assemble(st)
		if err := s.advance(min(s.in.T+s.until(), end)); err != nil {
			return err
		}
		if each != nil {
			each(s)
		}
	}
	return nil
}

// How often valve and fan are looked at, s: while they may move, and while the
// engine is cold.
const (
	lookS = 4.0
	coldS = 15.0
)

// Hurry makes the steps coarser, for crowds of cars of which none has to be
// right by itself: temperatures stay within three kelvins of the fine run's.
func (s *Sim) Hurry() { s.hurry = true }

// advance carries the heat balance on.
func (s *Sim) advance(to float64) error {
	if s.hurry {
		return s.in.Leap(to)
	}
	return s.in.To(to)
}

// until is the time to the next look: a few seconds while valve or fan may
// move, longer while the engine is cold.
func (s *Sim) until() float64 {
	for _, v := range s.valves {
		if s.in.Y[v.wax] >= v.opensC-8 {
			return lookS
		}
	}
	switch {
	case s.ECT() >= diagram.Celsius(s.p.FanOnC-8):
		return lookS
	case s.hurry:
		return 2 * coldS
	}
	return coldS
}

// control moves the valves by their wax, and the fan by what it is told.
func (s *Sim) control(st Stage) {
	for i := range s.valves {
		v := &s.valves[i]
		// half a look ahead, where the wax will be on the mean until the next one
		wax, around := s.in.Y[v.wax], s.in.Y[v.sense]
		if i == 0 {
			around += s.heatWax(st)
		}
		v.move(wax + (around-wax)*min(lookS/2/s.p.WaxLagS, 1))
	}
	s.turnFan()
}

// Settle starts anew with everything at the thermostat's rating and runs the
// stage until no temperature moves by more than 0.1 K in two minutes, or for an
// hour. It reports whether it came to rest: with a fan that cycles or coolant that
// boils away slowly it needn't.
func (s *Sim) Settle(st Stage) (rests bool, err error) {
	for i := range s.in.Y[:s.account] {
		s.in.Y[i] = s.valves[0].opensC
	}
	s.in.Y[s.account] = 0
	before := make([]float64, s.account)
	span := st
	span.Seconds = 120
	for end := s.in.T + 3600; s.in.T < end && !rests; {
		copy(before, s.in.Y)
		if err := s.Run(span, nil); err != nil {
			return false, err
		}
		rests = true
		for i, was := range before {
			rests = rests && math.Abs(s.in.Y[i]-was) <= 0.1
		}
	}
	return rests, nil
}
