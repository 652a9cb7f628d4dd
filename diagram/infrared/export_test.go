package infrared

import "loopbook/diagram"

// The physics below the exported names, for the tests from outside.
var (
	Fraction     = fraction
	Radiance     = radiance
	Slope        = slope
	Temperature  = temperature
	ReadSurfaces = readSurfaces
)

// Shows is what the gun shows of a surface at that true temperature, by the
// balance that Correct solves the other way.
func (g Gun) Shows(trueC diagram.Celsius, s Surface, surroundings diagram.Celsius) diagram.Celsius {
	seen := s.Typical*radianceC(trueC) + (1-s.Typical)*radianceC(surroundings)
	own := (seen - (1-g.Emissivity)*radianceC(g.ReflectedC)) / g.Emissivity
	return diagram.Kelvin(temperature(own)).Celsius()
}
