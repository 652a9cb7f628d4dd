package physics

import "math"

// Stage is how the car is run for a while.
type Stage struct {
	Seconds  float64
	RPM      float64 // of the engine
	HeatKW   float64 // from the engine into its metal and coolant
	SpeedKmh float64
	Blower   float64 // of the cabin, 0 to 1

	// HeaterShut is a car with a valve in its heater, turned to cold. Most have a
	// flap instead, and coolant always flows (published, T8).
	HeaterShut bool
}

// The drives that the parameters' heats stand for.
const (
	idleRPM   = 800
	raisedRPM = 2500
	roadRPM   = 2200
	roadKmh   = 70
)

// Idle is a stage at idle, in the workshop, with the cabin's blower at a part.
func (p Params) Idle(seconds, blower float64) Stage {
	return p.Drive(seconds, idleRPM, 0, blower)
}

// Raised is a stage at 2500 rpm without load.
func (p Params) Raised(seconds, blower float64) Stage {
	return p.Drive(seconds, raisedRPM, 0, blower)
}

// Road is a stage at a steady 70 km/h.
func (p Params) Road(seconds, blower float64) Stage {
	return p.Drive(seconds, roadRPM, roadKmh, blower)
}

// Drive is a stage at any speed of engine and car on a level road. Standing,
// the heat goes with the engine's speed, as its friction and pumping do; on the
// road it grows with the car's speed from a part that rolling takes to one
// that the air's drag takes (judgement). An engine speed of 0 is not known.
func (p Params) Drive(seconds, rpm, kmh, blower float64) Stage {
	st := Stage{Seconds: seconds, RPM: rpm, SpeedKmh: kmh, Blower: blower}
	if kmh <= 0 {
		if rpm <= 0 {
			st.RPM = idleRPM
		}
		st.HeatKW = p.IdleHeatKW + (p.RaisedHeatKW-p.IdleHeatKW)*(max(st.RPM, 500)-idleRPM)/(raisedRPM-idleRPM)
		return st
	}
	if rpm <= 0 {
		st.RPM = 1150 + 15*kmh
	}
	st.HeatKW = p.RoadHeatKW * (0.55 + 0.45*math.Pow(kmh/roadKmh, 1.5))
	return st
}
