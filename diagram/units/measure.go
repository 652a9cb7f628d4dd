package units

import (
	"regexp"
	"strconv"
	"strings"
)

// Measure reads numbers that a case keeps in one unit, with that or another one written behind them
// or none.
type Measure struct {
	of    map[string]float64 // how much each is of the kept one
	whole bool               // nobody reads a thousandth of it: three figures behind a comma or a point are thousands
}

// Litres and those below are the measures of a case that have no choice of units in the menus. Factors are those of NIST SP 811,
// appendix B.8; the gallon and the quart are those of the United States.
func Litres() Measure {
	return Measure{of: map[string]float64{"l": 1, "litre": 1, "litres": 1, "liter": 1, "liters": 1, "ml": 0.001, "gal": 3.785412, "qt": 0.9463529}}
}
func Metres() Measure      { return Measure{map[string]float64{"m": 1, "ft": 0.3048}, true} }
func Millimetres() Measure { return Measure{of: map[string]float64{"mm": 1, "cm": 10, "in": 25.4}} }
func Minutes() Measure {
	return Measure{of: map[string]float64{"min": 1, "s": 1.0 / 60, "sec": 1.0 / 60, "h": 60}}
}
func Hours() Measure { return Measure{of: map[string]float64{"h": 1, "hrs": 1, "min": 1.0 / 60}} }
func Ohms() Measure {
	return Measure{map[string]float64{"ohm": 1, "ohms": 1, "ω": 1, "k": 1000, "kohm": 1000, "kω": 1000}, true}
}
func Volts() Measure { return Measure{of: map[string]float64{"v": 1, "mv": 0.001}} }
func Revs() Measure  { return Measure{map[string]float64{"rpm": 1, "u/min": 1}, true} }

func kilopascals() Measure {
	return Measure{of: map[string]float64{"kpa": 1, "psi": kPaPerPSI, "bar": kPaPerBar}}
}

// kilometres are of a distance and of a speed alike.
func kilometres() Measure {
	return Measure{map[string]float64{"km": 1, "km/h": 1, "kmh": 1, "mi": kmPerMile, "mile": kmPerMile, "miles": kmPerMile, "mph": kmPerMile}, true}
}

// Parse reads a number in the kept unit, or in the one behind it.
func (m Measure) Parse(text string) (float64, error) {
	number, unit := typed(text)
	of, known := m.of[unit]
	switch {
	case unit == "":
		number, of = strings.TrimSpace(text), 1
	case !known:
		return 0, refusal(text)
	}
	if m.whole && of < 1000 {
		number = ungrouped(number)
	}
	v, err := Number(number)
	return v * of, err
}

// parse is Parse where a bare number is in that unit.
func (m Measure) parse(text, bare string) (float64, error) {
	if _, unit := typed(text); unit == "" && bare != "" {
		text += " " + bare
	}
	return m.Parse(text)
}

// grouped is a number whose thousands are parted by commas or by points.
var grouped = regexp.MustCompile(`^[+-]?[1-9]\d{0,2}((,\d{3})+|(\.\d{3})+)$`)

// ungrouped takes those out.
func ungrouped(number string) string {
	if grouped.MatchString(number) {
		return strings.NewReplacer(",", "", ".", "").Replace(number)
	}
	return number
}

// Clock is Parse for a measure of time, which may also be written as on a clock: 1:30 are one and a
// half of the kept unit, minutes or hours.
func (m Measure) Clock(text string) (float64, error) {
	whole, part, ok := strings.Cut(strings.TrimSpace(text), ":")
	if !ok {
		return m.Parse(text)
	}
	a, errA := strconv.ParseUint(whole, 10, 16)
	b, errB := strconv.ParseUint(part, 10, 8)
	if errA != nil || errB != nil || b >= 60 || len(part) != 2 {
		return 0, refusal(text)
	}
	return float64(a) + float64(b)/60, nil
}
