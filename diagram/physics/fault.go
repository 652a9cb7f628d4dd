package physics

import (
	"errors"
	"fmt"
)

// ErrCause is wrapped when a cause is unknown or its severity is not 0 to 1.
var ErrCause = errors.New("unknown cause or severity")

// Fault is a cause of the case format, from hardly there (0) to as bad as it
// gets (1). How much of a fault a severity is, is our judgement and has no
// source; what is checked is which way each temperature goes.
type Fault struct {
	Cause    string
	Severity float64
}

// faulty is what no healthy car's parameters can express.
type faulty struct {
	least, most  float64 // of the thermostat's lift
	opensK       float64 // added to its rating
	bypassStays  float64 // open, as a part of its lift
	softHose     float64 // resistance of the lower hose at the rated speed
	airBlocked   float64 // part of the radiator's air
	cabinBlocked float64 // part of the cabin's air
	supplyWK     float64 // of warm coolant that rises in a heater supply without flow
	gasKW        float64 // combustion gas into the coolant, at the rated speed
	sensorK      float64 // added to what the sensor shows
	fanOff       bool
	fanStuck     bool
}

// on changes a healthy car's parameters into those with the fault.
func (f Fault) on(p Params) (Params, faulty, error) {
	s := f.Severity
	x := faulty{most: 1}
	if !(s >= 0 && s <= 1) {
		return p, x, fmt.Errorf("severity %g of %s: %w", s, f.Cause, ErrCause)
	}
	block := func(drop *float64, most float64) { *drop *= 1 + most*s*s }
	switch f.Cause {
	case "", "none":
	case "thermostat-stuck-open":
		x.least = 0.1 + 0.9*s
	case "thermostat-stuck-closed":
		x.most = 0.03 * (1 - s)
		p.MainLeak *= 1 - 0.99*s // jammed with grit, its vent pin too
	case "thermostat-late":
		x.opensK, p.WaxLagS, x.most = 4+10*s, p.WaxLagS*(1+3*s), 1-0.5*s
	case "thermostat-early":
		x.opensK = -8 - 17*s
	case "radiator-restricted":
		block(&p.RadiatorDrop, 200)
		p.RadiatorUAWK *= 1 - 0.75*s
	case "radiator-airflow":
		x.airBlocked = 0.3 + 0.6*s
	case "fan-not-running":
		x.fanOff = true
	case "pump-weak":
		p.PumpShutOffKPa *= (1 - 0.9*s) * (1 - 0.9*s)
	case "coolant-low-air":
		p.PumpShutOffKPa *= 1 - 0.7*s
		block(&p.HeaterDrop, 100)
		p.EngineWaterL *= 1 - 0.4*s
	case "external-leak":
		p.PumpShutOffKPa *= 1 - 0.3*s
		block(&p.HeaterDrop, 30)
		p.CapKPa *= 1 - s
	case "lower-hose-collapse":
		x.softHose = 600 * s
	case "bypass-open":
		x.bypassStays = 0.5 + 0.5*s
		p.BypassDrop *= 1 - 0.88*s
	case "heater-core-restricted":
		block(&p.HeaterDrop, 300)
	case "heater-valve-shut": // under 0.5 in the supply, so that both hoses are cold; else behind the core's supply, which stays hot
		p.HeaterDrop *= 1e8
		if s >= 0.5 {
			x.supplyWK = 15
		}
	case "combustion-leak":
		x.gasKW = 6 * s
		block(&p.HeaterDrop, 60) // gas gathers in the core, which lies high in most cars
	case "cap-weak":
		p.CapKPa *= 1 - s
	case "sensor-reads-low":
		x.sensorK = -6 - 24*s
	case "sensor-reads-high":
		x.sensorK = 6 + 24*s
	case "coolant-mix-wrong":
		block(&p.HeaterDrop, 40)
		block(&p.RadiatorDrop, 40)
		p.RadiatorUAWK *= 1 - 0.4*s
	case "fan-always-running":
		x.fanStuck = true
	case "heater-air-side":
		x.cabinBlocked = 0.4 + 0.55*s
	case "thermostat-heater-fault": // most heaters fail as a whole; other thermostats have none
		p.WaxHeaterK *= 0.4 * (1 - s)
	case "cap-vacuum-stuck":
		// sucks hoses flat as the car cools overnight: no temperature tells
	default:
		return p, x, fmt.Errorf("%q: %w", f.Cause, ErrCause)
	}
	return p, x, nil
}
