package trial

import (
	"fmt"
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
)

// car is one car: its sizes, its fault and its measuring errors. Heat flows
// are watts; conductances and flows, as capacity rates, watts per kelvin.
type car struct {
	loop  *diagram.Loop
	cause cases.Cause
	fault fault
	airC  float64

	motive                      cases.Motive
	idleW, raisedW, roadW       float64 // heat into the coolant
	headJK, blockJK, coupleWK   float64
	bodyWK                      float64 // from the block to the air around
	pumpWK                      float64 // at 800 rpm, against no resistance
	radiator, bypass, heater    float64 // how readily each branch flows
	bypassRest                  float64 // part of the bypass left when the thermostat is open
	stillWK, fanWK, ramWK       float64 // radiator to air: standing, fan, 80 km/h
	filmWK                      float64 // coolant to radiator
	coreWK, blowerWK            float64
	blendDoor                   bool // no heater valve: the core always flows
	fan                         cases.FanKind
	fanOnC, fanOffC             float64
	ratedC, opensC, spanK, leak float64
	capKPa, strength, boilC     float64
	sensorK, patienceC          float64
	gun                         gun
}

// newCar draws a car around a middling one of 1.8 litres, by judgement: 3.7 kW
// into the coolant at idle, 11 l/min through the engine with the thermostat
// shut, 15 to 60 °C of hose over a quarter of an hour.
func newCar(d dice, l *diagram.Loop, cause cases.Cause) *car {
	v := &car{loop: l, cause: cause, fault: newFault(d, cause), motive: "petrol"}
	v.airC = season(d, cause)
	v.engine(d)
	size := d.between(0.75, 1.35)
	v.idleW, v.raisedW, v.roadW = v.idleW*size, v.raisedW*size, v.roadW*size
	v.headJK, v.blockJK = v.headJK*size, v.blockJK*size
	v.pumpWK = size * d.about(1750, 0.25)
	v.radiator, v.bypass, v.heater = d.about(1.6, 0.25), d.about(0.4, 0.3), d.about(0.42, 0.25)
	v.bypassRest = pick(d, 0, 0, 0.05, 0.12)
	v.stillWK, v.fanWK, v.ramWK = size*d.about(25, 0.3), size*d.about(240, 0.3), size*d.about(750, 0.3)
	v.filmWK = size * d.about(600, 0.25)
	v.coreWK, v.blowerWK, v.blendDoor = d.about(115, 0.2), d.about(60, 0.25), d.chance(0.7)
	v.thermostat(d)
	v.filling(d)
	v.sensorK, v.patienceC = d.normal(1.3), max(v.ratedC+10, d.between(107, 116))
	v.gun = newGun(d, l)
	return v
}

// engine draws the heats and masses of a middling engine.
func (v *car) engine(d dice) {
	v.idleW, v.raisedW, v.roadW = d.about(4900, 0.25), d.about(8500, 0.25), d.between(9000, 18000)
	v.headJK, v.blockJK, v.coupleWK = d.about(24e3, 0.2), d.about(32e3, 0.2), d.about(150, 0.2)
	v.bodyWK = d.about(8, 0.3)
	if d.chance(0.35) { // a diesel turns less of its fuel into idle heat
		v.motive = "diesel"
		v.idleW, v.blockJK = 0.75*v.idleW, 1.15*v.blockJK
	}
}

// thermostat draws the rating with TH1's tolerance and TH2's span of
// numbers.csv, and the fan's switch with it.
func (v *car) thermostat(d dice) {
	v.ratedC = pick(d, 82.0, 88, 88, 92)
	if v.loop.Heated() {
		v.ratedC = 105
	}
	v.opensC, v.spanK, v.leak = v.ratedC+d.between(-2, 2), d.between(10, 14), d.between(0, 0.0015)
	v.fan = "electric"
	if d.chance(0.15) {
		v.fan = "viscous"
	}
	v.fanOnC = max(0.55*v.ratedC+d.between(46, 52), v.ratedC+d.between(4, 7))
	v.fanOffC = v.fanOnC - d.between(4, 7)
}

// filling draws cap and coolant, and where they let it boil.
func (v *car) filling(d dice) {
	v.capKPa, v.strength = pick(d, 90.0, 110, 110, 140), d.between(42, 56)
	if v.fault.strength >= 0 {
		v.strength = v.fault.strength
	}
	m := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: coolant.VolumePercent(v.strength)}
	boil, err := m.BoilUnderCapC(diagram.KPa(v.capKPa*v.fault.cap), 0)
	if err != nil {
		panic(fmt.Sprintf("trial: a filling of %g %%: %v", v.strength, err))
	}
	v.boilC = float64(boil)
}

// season is the air's temperature: people come with a hot engine in summer and
// with a cold cabin in winter.
func season(d dice, cause cases.Cause) float64 {
	a, b := d.between(-10, 38), d.between(-10, 38)
	switch cause {
	case "thermostat-stuck-closed", "thermostat-late", "radiator-restricted", "radiator-airflow", "fan-not-running", "pump-weak",
		"lower-hose-collapse", "bypass-open", "cap-weak", "combustion-leak":
		return max(a, b)
	case "thermostat-stuck-open", "thermostat-early", "heater-core-restricted", "heater-valve-shut", "heater-air-side", "fan-always-running":
		return min(a, b)
	}
	return a
}

// record is the case as it is opened: what the technician notes of the car.
func (v *car) record(d dice) cases.Case {
	c := cases.Case{Format: cases.Format, Version: cases.Version}
	c.Vehicle.Motive = v.motive
	c.Loop.Layout = v.loop.ID
	c.Loop.Fan = v.fan
	c.Site.AmbientC = celsius(v.airC + d.normal(1))
	if d.chance(0.85) {
		c.Loop.ThermostatOpensC = celsius(v.ratedC)
	}
	if d.chance(0.7) {
		c.Loop.CapKPa = ptr(diagram.KPa(v.capKPa))
	}
	return c
}

// celsius is a temperature as it is written down, to a tenth.
func celsius(t float64) *diagram.Celsius { return ptr(diagram.Celsius(math.Round(t*10) / 10)) }

func ptr[T any](v T) *T { return &v }
