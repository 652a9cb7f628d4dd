package units

import (
	"regexp"
	"strconv"

	"loopbook/diagram"
)

// amounts finds a quantity in a sentence, with a first end where it is a
// range: "84 to 94 °C", "5.6 K".
var amounts = regexp.MustCompile(`(?:(-?\d+(?:\.\d+)?)( to |–))?(-?\d+(?:\.\d+)?) (°C|K|kPa|km/h)(\b|$)`)

// Sentence rewrites a sentence that speaks in °C, K, kPa and km/h into the
// chosen units.
func (s Set) Sentence(text string) string {
	if s == Metric() {
		return text
	}
	return amounts.ReplaceAllStringFunc(text, func(found string) string {
		part := amounts.FindStringSubmatch(found)
		convert, unit := s.spoken(part[4])
		out := word(part[3], convert) + " " + unit
		if part[1] != "" {
			out = word(part[1], convert) + part[2] + out
		}
		return out
	})
}

// spoken is how a metric unit is said in the chosen set.
func (s Set) spoken(unit string) (convert func(float64) string, to string) {
	switch unit {
	case "°C":
		return func(v float64) string { return Short(s.FromC(diagram.Celsius(v)), 0) }, string(s.Temperature)
	case "K":
		return func(v float64) string { return Short(s.FromK(diagram.DeltaK(v)), 0) }, s.DeltaUnit()
	case "kPa":
		return func(v float64) string { return s.Press(diagram.KPa(v)) }, string(s.Pressure)
	}
	return s.Dist, s.SpeedUnit()
}

func word(number string, convert func(float64) string) string {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return number // the pattern lets none through
	}
	return convert(v)
}
