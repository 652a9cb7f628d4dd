package diagram

// Point is a place on the loop where a temperature is taken.
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

var pointNames = map[Point]string{
	EngineOut:   "Upper hose, engine",
	RadIn:       "Upper hose, radiator",
	RadOut:      "Lower hose, radiator",
	PumpIn:      "Lower hose, engine",
	Housing:     "Thermostat housing",
	Bypass:      "Bypass",
	HeaterIn:    "Heater supply",
	HeaterOut:   "Heater return",
	BottleBleed: "Bleed line",
	BottleOut:   "Bottle feed",
	OilIn:       "Oil cooler supply",
	OilOut:      "Oil cooler return",
	AirOn:       "Air before radiator",
	AirOff:      "Air behind radiator",
	Vent:        "Cabin vent",
}

// Points lists every point of the case format, along the flow.
func Points() []Point {
	return []Point{
		Housing, EngineOut, RadIn, RadOut, PumpIn, Bypass, HeaterIn, HeaterOut,
		BottleBleed, BottleOut, OilIn, OilOut, AirOn, AirOff, Vent,
	}
}

// Known reports whether p is a point of the case format.
func (p Point) Known() bool { _, ok := pointNames[p]; return ok }

// String is the point in the words of the trade.
func (p Point) String() string {
	if name, ok := pointNames[p]; ok {
		return name
	}
	return string(p)
}

// Air reports whether p is a temperature of air, which a probe takes and no
// infrared thermometer can.
func (p Point) Air() bool { return p == AirOn || p == AirOff || p == Vent }
