package physics

import (
	"errors"
	"fmt"
	"math"

	"loopbook/diagram"
)

// ErrCause is wrapped when a cause is unknown or its severity is not 0 to 1.
var ErrCause = errors.New("unknown cause or severity")

// Fault is a cause of the case format, from hardly there (0) to as bad as it
// gets (1). Some faults come in several forms, of which Form, 0 to 1, chooses: at
// 0 the plain one, and each in about its share of the range. How much of a
// fault a severity is, and the shares, are our judgement and have no source;
// what is checked is which way each temperature goes.
type Fault struct {
	Cause    string
	Severity float64
	Form     float64
}

// faulty is what no healthy car's parameters can express.
type faulty struct {
	least, most  float64 // of the thermostat's lift
	opensK       float64 // added to its rating
	sticksK      float64 // over which it is shut from cold, before it lets go and works
	bypassStays  float64 // open, as a part of its lift
	softHose     float64 // resistance of the lower hose at the rated speed
	airBlocked   float64 // part of the radiator's air
	cabinBlocked float64 // part of the cabin's air
	supplyWK     float64 // of warm coolant that rises in a heater supply without flow
	gasKW        float64 // combustion gas into the coolant, at the rated speed
	sensorK      float64 // added to what the sensor shows
	sensorSlope  float64 // of its excess over ambient, added to what it shows
	sensorStuckC float64 // what it shows whatever there is; 0: it isn't stuck
	fanPart      float64 // of the air that it should move
	heats        bool    // a heated thermostat's heater, always
	fanOff       bool
	fanStuck     bool
}

// sound is nothing at fault.
func sound() faulty { return faulty{most: 1, fanPart: 1} }

// on changes a healthy car's parameters into those with the fault.
func (f Fault) on(p Params) (Params, faulty, error) {
	s := f.Severity
	x := sound()
	if !(s >= 0 && s <= 1 && f.Form >= 0 && f.Form <= 1) {
		return p, x, fmt.Errorf("severity %g, form %g of %s: %w", s, f.Form, f.Cause, ErrCause)
	}
	block := func(drop *float64, most float64) { *drop *= 1 + most*s*s }
	scale := func(drop *float64, times float64) { *drop *= math.Pow(times, s) }
	switch f.Cause {
	case "", "none":
	case "thermostat-stuck-open":
		x.least = leastAjar * math.Pow(1/leastAjar, s)
	case "thermostat-stuck-closed":
		// some hang ajar by a hair: an engine that gets hot in minutes, not one that boils
		x.most = 0.012 * (1 - s) * (1 - s)
		if f.Form > 0.7 { // or by more: one that gets hot and stays there
			x.most = 0.05 * (1 - s)
		}
		p.MainLeak *= 0.3*(1-s) + 0.01 // jammed with grit, its vent pin too
	case "thermostat-late":
		f.late(&p, &x)
	case "thermostat-early":
		x.opensK = -8 - 17*s
	case "radiator-restricted":
		scale(&p.RadiatorDrop, 1e4)
		p.RadiatorUAWK *= 1 - 0.7*s
	case "radiator-airflow":
		x.airBlocked = 0.35 + 0.63*s
	case "fan-not-running":
		x.fanOff = f.Form <= 0.8
		x.fanPart = 0.4 - 0.35*s // slow: one speed of two gone, a worn clutch
	case "pump-weak":
		p.PumpShutOffKPa *= (1 - 0.97*s) * (1 - 0.97*s)
	case "coolant-low-air":
		f.airLocks(&p, &x)
	case "external-leak":
		p.CapKPa *= 1 - s
		if f.Form <= 0.5 { // lower than the heater's hoses by now
			p.PumpShutOffKPa *= 1 - 0.3*s
			block(&p.HeaterDrop, 30)
		}
	case "lower-hose-collapse":
		x.softHose = leastSoft * math.Pow(2e3, s)
	case "bypass-open":
		x.bypassStays = 0.5 + 0.5*s
		if f.Form <= 0.6 { // past a radiator's way to which the valve opens little: the heater keeps what it had (F11)
			scale(&p.ThermostatDrop, 7000)
		} else { // takes nearly all, the heater's share too
			p.BypassDrop *= math.Pow(3e-5, s*s)
		}
		if f.Form > 0.8 { // no thermostat fitted
			x.least = 1
		}
	case "heater-core-restricted":
		block(&p.HeaterDrop, 300)
	case "heater-valve-shut": // under 0.5 in the supply, so that both hoses are cold; else behind the core's supply, which stays hot
		p.HeaterDrop *= 1e8
		if s >= 0.5 {
			x.supplyWK = shutSupplyWK
		}
	case "combustion-leak":
		if f.Form <= 0.6 { // a small leak shows in no temperature
			x.gasKW = 6 * s
			block(&p.HeaterDrop, 60) // gas gathers in the core, which lies high in most cars
		}
	case "cap-weak":
		p.CapKPa *= 1 - s
	case "sensor-reads-low":
		f.misreads(&x, -1)
	case "sensor-reads-high":
		f.misreads(&x, 1)
	case "coolant-mix-wrong":
		if f.Form <= 0.4 { // sludge or rust; a wrong strength shows in no temperature
			scale(&p.HeaterDrop, 1e2)
			scale(&p.RadiatorDrop, 1e3)
			p.RadiatorUAWK *= 1 - 0.5*s
		}
	case "fan-always-running":
		x.fanStuck = true
		x.fanPart = 1 + f.Form // at full speed rather than the one that cycles
	case "heater-air-side":
		x.cabinBlocked = 0.25 + 0.65*s
	case "thermostat-heater-fault": // most heaters fail as a whole, some drivers never let go; other thermostats have none
		if x.heats = f.Form > 0.8; !x.heats {
			p.WaxHeaterK *= 0.4 * (1 - s)
		}
	case "cap-vacuum-stuck":
		// sucks hoses flat as the car cools overnight: no temperature tells
	default:
		return p, x, fmt.Errorf("%q: %w", f.Cause, ErrCause)
	}
	return p, x, nil
}

// leastAjar is the lift of a valve that dirt just keeps from its seat. On the road in the cold it
// lets an engine fall to 60 °C, where one that stands wide open would hold it at 30 °C: most
// that are complained of lie between, so the lift grows by the same factor with severity (judgement).
const leastAjar = 0.02

// leastSoft is what a hose that just gives way adds at the pump's rated speed, kPa/(L/s)²: some five times
// the rest of the loop. Hose, radiator and sludge change a resistance by a factor, from what is
// hardly felt to what lets nearly nothing through, and the bypass to one that takes nearly
// all: only that heats an engine that turns 2500 rpm without load, as the trade has it of
// them (F05, F10, F11; the factors are judgement).
const leastSoft = 100

// late is a thermostat that sticks and lets go at once, 8 to 25 K over its rating
// (signatures F03, common practice); in other forms one that opens too high all
// the time, or a little late and then too little.
func (f Fault) late(p *Params, x *faulty) {
	s := f.Severity
	switch {
	case f.Form <= 0.45:
		x.sticksK, p.WaxLagS = 6+19*s, p.WaxLagS*(1+s)
	case f.Form <= 0.75:
		x.opensK, p.WaxLagS, x.most = 4+12*s, p.WaxLagS*(1+3*s), 1-0.5*s
	default:
		x.opensK, x.most = 4+6*s, 0.3-0.25*s
	}
}

// Silent reports whether the fault changes no temperature of such a car as long
// as its coolant doesn't boil: it then shows what the healthy car does.
func (f Fault) Silent(l *diagram.Loop, p Params) bool {
	q, x, err := f.on(p)
	q.CapKPa = p.CapKPa
	if !l.Heated() {
		q.WaxHeaterK, x.heats = p.WaxHeaterK, false
	}
	return err == nil && q == p && x == sound()
}

// airLocks are what too little coolant, or air that is locked in, spoils: the
// pump's grip and the heater at first, and the bleed line; only one of them, or the sensor that
// stands in vapour as well, in other forms (F09; the forms' shares are judgement).
func (f Fault) airLocks(p *Params, x *faulty) {
	s := f.Severity
	p.EngineWaterL *= 1 - 0.4*s
	if f.Form <= 0.75 {
		p.HeaterDrop *= math.Pow(1e4, s) // up to a lock that nothing passes: both hoses cool (F09)
	}
	if f.Form <= 0.5 {
		p.BleedDrop *= 1 + 1e6*s*s // air stands in the bleed line: it stays cold
	}
	if f.Form <= 0.4 || f.Form > 0.75 {
		p.PumpShutOffKPa *= 1 - 0.7*s
	}
	if f.Form > 0.6 {
		x.sensorK = 40 * s * (0.8 - f.Form) * 5 // from +40 to −40 over this form's range
	}
}

// misreads sets a sensor's fault: an offset, one that grows with warmth, or a
// value at which it is stuck. The mildest are under what fails a sensor by itself (DT16) and over what passes
// it (DT15, common practice).
func (f Fault) misreads(x *faulty, sign float64) {
	s := f.Severity
	switch {
	case f.Form <= 0.65:
		x.sensorK = sign * (2 + 28*s)
	case f.Form <= 0.85:
		x.sensorSlope = sign * (0.06 + 0.34*s)
	default:
		x.sensorStuckC = 80 + sign*(15+40*s)
	}
}
