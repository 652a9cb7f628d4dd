package coolant

import "fmt"

// VolumePercent is the share of glycol by volume, 0 to 100, as a technician
// mixes it.
type VolumePercent float64

// MassPercent is the share of glycol by mass, 0 to 100, as tables of
// properties have it and mole fractions ask for it.
type MassPercent float64

// Base is what the coolant is made of, in the words of the case format.
type Base string

// The bases that a case can name.
const (
	EthyleneGlycol  Base = "ethylene-glycol"
	PropyleneGlycol Base = "propylene-glycol"
	Water           Base = "water"
)

// Mixture is a base in water. Plain water is Mixture{Water, 0}.
type Mixture struct {
	Base     Base
	Strength VolumePercent
}

// glycol is what is known of one base.
type glycol struct {
	table  []strengthRow // strengths and freezing points, ascending
	freeze VolumePercent // up to here the freezing point is known
	molar  float64       // g/mol
	vapour vapour
	liquid []liquidRow // of the other properties, ascending
}

// glycol looks the base up, and so checks the mixture.
func (m Mixture) glycol() (glycol, error) {
	if !(m.Strength >= 0 && m.Strength <= 100) {
		return glycol{}, fmt.Errorf("%s at %g %%: %w", m.Base, float64(m.Strength), ErrRange)
	}
	switch m.Base {
	case EthyleneGlycol:
		return ethylene, nil
	case PropyleneGlycol:
		return propylene, nil
	case Water:
		if m.Strength == 0 {
			return ethylene, nil // at no strength every base is water
		}
		return glycol{}, fmt.Errorf("water at %g %% of glycol: %w", float64(m.Strength), ErrRange)
	}
	return glycol{}, fmt.Errorf("unknown coolant base %q", m.Base)
}

// massAt is the strength by mass: the volume and mass columns of ASHRAE's
// table, between rows in a straight line, and from the last row (58 or 60 % by
// volume) in a straight line to pure glycol.
func (g glycol) massAt(s VolumePercent) MassPercent {
	return MassPercent(line(g.table, float64(s), volume, mass))
}
