package words

import (
	"slices"
	"strings"
	"unicode/utf8"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/vin"
)

// VIN warns of a number that can't be right. It is kept all the same.
func VIN(v cases.Vehicle) string {
	if strings.TrimSpace(v.VIN) == "" {
		return ""
	}
	n := vin.Read(v.VIN)
	switch n.Fault {
	case vin.WrongSize:
		return kit.L("window.vin.size", utf8.RuneCountInString(n.Text))
	case vin.WrongSign:
		return kit.L("window.vin.sign", n.At)
	case vin.WrongCheck:
		if n.Bound {
			return kit.L("window.vin.check", string(n.Want))
		}
		return kit.L("window.vin.check-elsewhere", string(n.Want))
	}
	if years := n.Years(); n.Bound && v.Year != nil && len(years) > 0 && !slices.Contains(years, *v.Year) {
		return kit.L("window.vin.year", years[0], *v.Year)
	}
	return ""
}
