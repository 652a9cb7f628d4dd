package window

import (
	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/cases"
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

// flat is whether all causes are alike before a case.
func (p preferences) flat() bool { return p.BoolWithFallback("all-causes-alike", false) }

func (p preferences) setFlat(on bool) { p.SetBool("all-causes-alike", on) }

func (p preferences) learn() desk.Learning {
	return desk.Learning(p.StringWithFallback("learn-from-notebook", string(desk.LearnUsual)))
}

func (p preferences) setLearn(l desk.Learning) { p.SetString("learn-from-notebook", string(l)) }

// usualRepair is the currency, the tax and the price of an hour that were noted
// last; below 0 a number is not known.
func (p preferences) usualRepair() cases.Repair {
	r := cases.Repair{Currency: p.String("currency")}
	for key, at := range map[string]**float64{"tax-percent": &r.TaxPercent, "labour-price-per-hour": &r.LabourPricePerHour} {
		if v := p.FloatWithFallback(key, -1); v >= 0 {
			*at = &v
		}
	}
	return r
}

func (p preferences) setUsualRepair(r cases.Repair) {
	p.SetString("currency", r.Currency)
	for key, v := range map[string]*float64{"tax-percent": r.TaxPercent, "labour-price-per-hour": r.LabourPricePerHour} {
		if v != nil {
			p.SetFloat(key, *v)
		}
	}
}
