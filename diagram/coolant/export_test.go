package coolant

// What the published tables are in and the product doesn't ask for, for the
// tests from outside.
var (
	SaturationKPa = saturationKPa
	SaturationK   = saturationK
)

// Mass is the mixture's strength by mass.
func (m Mixture) Mass() (MassPercent, error) {
	g, err := m.glycol()
	return g.massAt(m.Strength), err
}

// FromMass is the mixture of that strength by mass, the inverse of Mass.
func FromMass(base Base, s MassPercent) (Mixture, error) {
	g, err := Mixture{Base: base}.glycol()
	return Mixture{base, VolumePercent(line(g.table, float64(s), mass, volume))}, err
}
