package diagram

import "slices"

// Point is a place on the loop where a temperature is taken, by its word in the
// case format. Package say names it.
type Point string

// The points of the open case format. Each layout has some of them.
const (
	EngineOut   Point = "engine_out"
	RadIn       Point = "rad_in"
	RadOut      Point = "rad_out"
	PumpIn      Point = "pump_in"
	Housing     Point = "housing"
	Bypass      Point = "bypass"
	HeaterIn    Point = "heater_in"
	HeaterOut   Point = "heater_out"
	BottleBleed Point = "bottle_bleed"
	BottleOut   Point = "bottle_out"
	OilIn       Point = "oil_in"
	OilOut      Point = "oil_out"
	AirOn       Point = "air_on"
	AirOff      Point = "air_off"
	Vent        Point = "vent"
)

// Points lists every point of the case format, along the flow.
func Points() []Point {
	return []Point{
		Housing, EngineOut, RadIn, RadOut, PumpIn, Bypass, HeaterIn, HeaterOut,
		BottleBleed, BottleOut, OilIn, OilOut, AirOn, AirOff, Vent,
	}
}

// Known reports whether p is a point of the case format.
func (p Point) Known() bool { return slices.Contains(Points(), p) }

// Air reports whether p is a temperature of air, which a probe takes and no
// infrared thermometer can.
func (p Point) Air() bool { return p == AirOn || p == AirOff || p == Vent }
