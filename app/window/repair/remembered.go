package repair

import (
	"fyne.io/fyne/v2"

	"loopbook/cases"
)

// remembered is what the shop asked for last, for the next repair.
type remembered struct{ fyne.Preferences }

// usual is the currency, the tax and the price of an hour that were noted
// last; below 0 a number is not known.
func (p remembered) usual() cases.Repair {
	r := cases.Repair{Currency: p.String("currency")}
	for key, at := range map[string]**float64{"tax-percent": &r.TaxPercent, "labour-price-per-hour": &r.LabourPricePerHour} {
		if v := p.FloatWithFallback(key, -1); v >= 0 {
			*at = &v
		}
	}
	return r
}

func (p remembered) setUsual(r cases.Repair) {
	p.SetString("currency", r.Currency)
	for key, v := range map[string]*float64{"tax-percent": r.TaxPercent, "labour-price-per-hour": r.LabourPricePerHour} {
		if v != nil {
			p.SetFloat(key, *v)
		}
	}
}
