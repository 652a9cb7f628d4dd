package physics

// Stage is how the car is run for a while.
type Stage struct {
	Seconds  float64
	RPM      float64 // of the engine
	HeatKW   float64 // from the engine into its metal and coolant
	SpeedKmh float64
	Blower   float64 // of the cabin, 0 to 1
}

// Idle is a stage at idle, in the workshop, with the cabin's blower at a part.
func (p Params) Idle(seconds, blower float64) Stage {
	return Stage{Seconds: seconds, RPM: 800, HeatKW: p.IdleHeatKW, Blower: blower}
}

// Raised is a stage at 2500 rpm without load.
func (p Params) Raised(seconds, blower float64) Stage {
	return Stage{Seconds: seconds, RPM: 2500, HeatKW: p.RaisedHeatKW, Blower: blower}
}

// Road is a stage at a steady 70 km/h.
func (p Params) Road(seconds, blower float64) Stage {
	return Stage{Seconds: seconds, RPM: 2200, HeatKW: p.RoadHeatKW, SpeedKmh: 70, Blower: blower}
}
