package infrared

// The physics below the exported names, for the tests from outside.
var (
	Fraction     = fraction
	Radiance     = radiance
	Slope        = slope
	Temperature  = temperature
	ReadSurfaces = readSurfaces
)
