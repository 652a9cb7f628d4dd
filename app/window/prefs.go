package window

import (
	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/diagram/units"
)

// Preferences are what a person has chosen for the window. They live in the
// toolkit's store, apart from any case.
type preferences struct{ fyne.Preferences }

func (p preferences) units() units.Set {
	return units.Set{
		Temperature: units.Temperature(p.StringWithFallback("temperature", string(units.C))),
		Pressure:    units.Pressure(p.StringWithFallback("pressure", string(units.KPa))),
		Distance:    units.Distance(p.StringWithFallback("distance", string(units.Km))),
	}
}

func (p preferences) setUnits(u units.Set) {
	p.SetString("temperature", string(u.Temperature))
	p.SetString("pressure", string(u.Pressure))
	p.SetString("distance", string(u.Distance))
}

func (p preferences) light() kit.Light {
	return kit.Light(p.StringWithFallback("light", string(kit.System)))
}

func (p preferences) setLight(l kit.Light) { p.SetString("light", string(l)) }
