package simulation

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
)

// codes are what the engine's control stores on the way, by testdata/trade/dtc.csv.
func codes(car Car, ill, well *course, opensC diagram.Celsius) []cases.Code {
	var out []cases.Code
	store := func(code string, at int) {
		ect, rpm, kmh := diagram.Celsius(ill.log.EctC[at]), ill.log.EngineRPM[at], ill.log.SpeedKmh[at]
		out = append(out, cases.Code{Code: code, State: "stored", FreezeFrame: cases.FreezeFrame{EctC: &ect, RPM: &rpm, SpeedKmh: &kmh}})
	}
	if math.Abs(ill.log.EctC[0]-float64(car.AmbientC)) >= implausK {
		store("P0116", 0)
	}
	// The control judges a thermostat by when a sound car would long have been warm.
	target := float64(opensC) - coldK
	if due := slower * well.reaches(target); car.AmbientC > coldNoC && due < ill.reaches(target) {
		if at := ill.at(due); at >= 0 {
			store("P0128", at)
		}
	}
	if at := ill.at(ill.reaches(max(tooHotC, float64(ill.sim.FanStartsC())+fanOverK))); at >= 0 {
		store("P0217", at)
	}
	switch last := len(ill.log.TimeS) - 1; {
	case car.Cause == "thermostat-heater-fault":
		store("P0597", last)
	case !ill.sim.FanObeys(true):
		store("P0480", last)
	case !ill.sim.FanObeys(false):
		store("P0483", last)
	}
	return out
}

// at is the log's first row from a time on; below 0: it ended before.
func (c *course) at(s float64) int {
	for i, t := range c.log.TimeS {
		if t >= s {
			return i
		}
	}
	return -1
}
