package units

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"loopbook/diagram"
)

// ErrNotANumber says that what was typed can't be read.
var ErrNotANumber = errors.New("not a number")

// ParseTemp reads a temperature typed in the chosen unit, or in the one behind it.
func (s Set) ParseTemp(text string) (diagram.Celsius, error) {
	number, unit := typed(text)
	switch unit {
	case "":
	case "c":
		s.Temperature = C
	case "f":
		s.Temperature = F
	default:
		return 0, refusal(text)
	}
	v, err := Number(number)
	if err != nil {
		return 0, err
	}
	c := diagram.Celsius(v)
	if s.Temperature == F {
		c = diagram.Celsius((v - 32) / 1.8)
	}
	if !c.Plausible() {
		return 0, fmt.Errorf("%s %s can't be: write %s to %s", Short(v, 1), s.Temperature, s.Temp(diagram.MinC), s.Temp(diagram.MaxC))
	}
	return c, nil
}

// ParsePressure reads a pressure typed in the chosen unit, or in the one behind
// it.
func (s Set) ParsePressure(text string) (diagram.KPa, error) {
	v, err := kilopascals().parse(text, strings.ToLower(string(s.Pressure)))
	return diagram.KPa(v), err
}

// ParseDist reads a distance (or a speed) typed in the chosen unit or in the one behind it, in km. Three
// figures behind a comma or a point are thousands: nobody reads metres off an
// odometer. So is a k behind the number.
func (s Set) ParseDist(text string) (float64, error) {
	number, unit := typed(text)
	if rest, k := cutThousand(unit); k {
		v, err := s.ParseDist(strings.TrimSpace("1 " + rest))
		if err != nil {
			return 0, refusal(text)
		}
		n, err := Number(number)
		return n * 1000 * v, err
	}
	bare := "km"
	if s.Distance == Miles {
		bare = "mi"
	}
	return kilometres().parse(text, bare)
}

// ParseVolume reads a volume in that unit or in the one behind it, in litres.
func (s Set) ParseVolume(text string) (float64, error) {
	return Litres().parse(text, strings.ToLower(s.VolumeUnit()))
}

// ParseHeight reads a height in that unit or in the one behind it.
func (s Set) ParseHeight(text string) (diagram.Metre, error) {
	m, err := Metres().parse(text, s.HeightUnit())
	return diagram.Metre(m), err
}

// Number reads a number as a person types it: a comma or a point, blanks
// around and between thousands, a percent sign behind it. Where comma and point stand in it,
// the later one parts the fraction off. A letter in it is a slip: nobody types 1e2 for 100.
func Number(text string) (float64, error) {
	t := strings.NewReplacer("\u00a0", " ", "\u202f", " ", "−", "-").Replace(text)
	t = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(t), "%"))
	if thousands(t) {
		t = strings.ReplaceAll(t, " ", "")
	}
	switch comma, point := strings.LastIndex(t, ","), strings.LastIndex(t, "."); {
	case comma > point && point >= 0:
		t = strings.ReplaceAll(t, ".", "")
	case point > comma && comma >= 0:
		t = strings.ReplaceAll(t, ",", "")
	}
	t = strings.ReplaceAll(t, ",", ".")
	v, err := strconv.ParseFloat(t, 64)
	if err != nil || strings.ContainsAny(t, "eExXpP_") || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, refusal(text)
	}
	return v, nil
}

func refusal(text string) error {
	return fmt.Errorf("%q is %w: write 70 or 70.5", strings.TrimSpace(text), ErrNotANumber)
}

// thousands reports whether the blanks in a number part thousands off: "12 500", but not "10 2",
// which may be 10.2 or 102.
func thousands(t string) bool {
	whole := t
	if i := strings.IndexAny(t, ",."); i >= 0 {
		whole = t[:i]
	}
	groups := strings.Split(strings.TrimLeft(whole, "+-"), " ")
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && (g == "" || len(g) > 3) {
			return false
		}
	}
	return len(groups) > 1 && !strings.Contains(t[len(whole):], " ")
}

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
