package words

import (
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Boiling tells how far the loop is from boiling.
func Boiling(b *evidence.Boiling, u units.Set) string {
	if b == nil {
		return ""
	}
	return say.English().With(u).Of("window.frame.boils", b.PointC, b.HottestC, b.MarginK, b.Where)
}

// Coolant tell when the filling freezes, and boils under the cap, as far
// as its strength, the cap and the altitude are known.
func Coolant(c cases.Case, u units.Set) string {
	fill := c.Loop.Coolant
	mix := coolant.Mixture{Base: coolant.Base(fill.Base)}
	switch {
	case fill.Base == "":
		return ""
	case fill.VolumePercent != nil:
		mix.Strength = coolant.VolumePercent(*fill.VolumePercent)
	case fill.Base != cases.Water:
		return ""
	}
	var words []any
	if freezes, err := mix.FreezeC(); err == nil {
		words = append(words, say.Of("window.frame.freezes", freezes))
	}
	if c.Loop.CapKPa != nil {
		altitude := diagram.Metre(0)
		if a := c.Site.AltitudeM; a != nil {
			altitude = *a
		}
		if boils, err := mix.BoilUnderCapC(*c.Loop.CapKPa, altitude); err == nil {
			words = append(words, say.Of("window.frame.boils-capped", boils))
		}
	}
	switch by := say.English().With(u); len(words) {
	case 0:
		return ""
	case 1:
		return by.Of("window.frame.filling", words...)
	default:
		return by.Of("window.frame.filling-both", words...)
	}
}
