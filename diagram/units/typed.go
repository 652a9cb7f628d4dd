package units

import "strings"

// typed parts a number from the unit that is written behind it, in small letters
// and without the degree sign: "1,4 bar" is "1,4" and "bar".
func typed(text string) (number, unit string) {
	text = strings.TrimSpace(text)
	end := strings.LastIndexAny(text, "0123456789") + 1
	return text[:end], strings.ToLower(strings.Trim(text[end:], " \u00a0°."))
}

// cutThousand parts the k of "98k" or "61k miles" from the unit; false where there is none.
func cutThousand(unit string) (rest string, k bool) {
	rest, k = strings.CutPrefix(unit, "k")
	if !k || rest != "" && rest[0] != ' ' {
		return unit, false
	}
	return strings.TrimSpace(rest), true
}

// asTemperature is the set that a temperature was typed in: its own unit, or the
// one that is written behind it; false where that is none of a temperature.
func (s Set) asTemperature(unit string) (Set, bool) {
	switch unit {
	case "":
	case "c":
		s.Temperature = C
	case "f":
		s.Temperature = F
	default:
		return s, false
	}
	return s, true
}

// asPressure is asTemperature for a pressure.
func (s Set) asPressure(unit string) (Set, bool) {
	switch unit {
	case "":
	case "kpa":
		s.Pressure = KPa
	case "psi":
		s.Pressure = PSI
	case "bar":
		s.Pressure = Bar
	default:
		return s, false
	}
	return s, true
}
