package units

import (
	"regexp"
	"strconv"

	"loopbook/diagram"
)

// amounts finds a temperature or a difference in a sentence, with a first end
// where it is a range: "84 to 94 °C", "5.6 K".
var amounts = regexp.MustCompile(`(?:(-?\d+(?:\.\d+)?)( to |–))?(-?\d+(?:\.\d+)?) (°C|K)\b`)

// Sentence rewrites a sentence that gives temperatures in °C and differences
// in K into the chosen units.
func (s Set) Sentence(text string) string {
	if s.Temperature != F {
		return text
	}
	return amounts.ReplaceAllStringFunc(text, func(found string) string {
		part := amounts.FindStringSubmatch(found)
		convert, unit := s.tempWord, string(s.Temperature)
		if part[4] == "K" {
			convert, unit = s.deltaWord, s.DeltaUnit()
		}
		out := convert(part[3]) + " " + unit
		if part[1] != "" {
			out = convert(part[1]) + part[2] + out
		}
		return out
	})
}

func (s Set) tempWord(number string) string {
	v, _ := strconv.ParseFloat(number, 64) // the pattern matched a number
	return short(s.fromC(diagram.Celsius(v)), 0)
}

func (s Set) deltaWord(number string) string {
	v, _ := strconv.ParseFloat(number, 64)
	return short(s.fromK(diagram.DeltaK(v)), 0)
}
