// Package units writes quantities in the units that a person has chosen and
// reads what they type.
//
// Everything inside the program stays in degrees Celsius, kilopascals,
// kilometres, litres and metres; only words for people pass through here.
package units

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"loopbook/diagram"
)

// Temperature, Pressure and Distance are the choices.
type (
	Temperature string
	Pressure    string
	Distance    string
)

// The units to choose from, as they are written.
const (
	C     Temperature = "°C"
	F     Temperature = "°F"
	KPa   Pressure    = "kPa"
	PSI   Pressure    = "psi"
	Bar   Pressure    = "bar"
	Km    Distance    = "km"
	Miles Distance    = "miles"
)

// Exact by definition: the international mile, and 1 psi from the pound-force
// and the inch (NIST SP 811, appendix B.8).
const (
	kmPerMile = 1.609344
	kPaPerPSI = 6.894757293168361
	kPaPerBar = 100
)

// Set is one person's choice.
type Set struct {
	Temperature Temperature
	Pressure    Pressure
	Distance    Distance
}

// Metric is what is usual where °C is.
func Metric() Set { return Set{C, KPa, Km} }

// US is what is usual in the United States.
func US() Set { return Set{F, PSI, Miles} }

// ErrNotANumber says that what was typed can't be read.
var ErrNotANumber = errors.New("not a number")

// Temp writes a temperature without its unit, to a tenth where it has one.
func (s Set) Temp(c diagram.Celsius) string { return Short(s.FromC(c), 1) }

// TempUnit writes a temperature with its unit, whole.
func (s Set) TempUnit(c diagram.Celsius) string {
	return Short(s.FromC(c), 0) + " " + string(s.Temperature)
}

// TempRange writes a range of temperatures, whole and without the unit.
func (s Set) TempRange(low, high diagram.Celsius) string {
	return span(s.FromC(low), s.FromC(high))
}

// Delta writes a difference, whole, with its unit: K, or F° for a difference
// in degrees Fahrenheit.
func (s Set) Delta(k diagram.DeltaK) string { return Short(s.FromK(k), 0) + " " + s.DeltaUnit() }

// DeltaRange writes a range of differences with its unit.
func (s Set) DeltaRange(low, high diagram.DeltaK) string {
	return span(s.FromK(low), s.FromK(high)) + " " + s.DeltaUnit()
}

// DeltaUnit is the unit of a difference.
func (s Set) DeltaUnit() string {
	if s.Temperature == F {
		return "F°"
	}
	return "K"
}

// PressureUnit writes a pressure with its unit.
func (s Set) PressureUnit(p diagram.KPa) string {
	return Short(s.FromKPa(p), s.PressureDigits()) + " " + string(s.Pressure)
}

// Press writes a pressure without its unit.
func (s Set) Press(p diagram.KPa) string { return Short(s.FromKPa(p), s.PressureDigits()) }

// Dist writes a distance given in kilometres, whole and without its unit.
func (s Set) Dist(km float64) string { return Short(s.FromKm(km), 0) }

// DistUnit writes a distance with its unit, thousands apart.
func (s Set) DistUnit(km float64) string { return Thousands(s.FromKm(km)) + " " + s.DistanceUnit() }

// DistanceUnit is the unit of a distance. Behind a number it is a symbol in any language: "miles" is Spanish for
// thousands.
func (s Set) DistanceUnit() string {
	if s.Distance == Miles {
		return "mi"
	}
	return string(s.Distance)
}

// Speed writes a speed given in km/h, with its unit.
func (s Set) Speed(kmh float64) string {
	return Short(s.FromKm(kmh), 0) + " " + s.SpeedUnit()
}

// SpeedUnit is the unit of a speed.
func (s Set) SpeedUnit() string {
	if s.Distance == Miles {
		return "mph"
	}
	return "km/h"
}

// VolumeUnit is what a loop's filling is measured in: US quarts beside °F, which hardly anybody else writes.
func (s Set) VolumeUnit() string {
	if s.Temperature == F {
		return "qt"
	}
	return "L"
}

// FromL is a volume's number in that unit.
func (s Set) FromL(litres float64) float64 {
	return litres / Litres().of[strings.ToLower(s.VolumeUnit())]
}

// ParseVolume reads a volume in that unit or in the one behind it, in litres.
func (s Set) ParseVolume(text string) (float64, error) {
	return Litres().parse(text, strings.ToLower(s.VolumeUnit()))
}

// HeightUnit is what a height above the sea is measured in: feet beside °F.
func (s Set) HeightUnit() string {
	if s.Temperature == F {
		return "ft"
	}
	return "m"
}

// FromM is a height's number in that unit.
func (s Set) FromM(m diagram.Metre) float64 { return float64(m) / Metres().of[s.HeightUnit()] }

// ParseHeight reads a height in that unit or in the one behind it.
func (s Set) ParseHeight(text string) (diagram.Metre, error) {
	m, err := Metres().parse(text, s.HeightUnit())
	return diagram.Metre(m), err
}

// ParseTemp reads a temperature typed in the chosen unit, or in the one behind it.
func (s Set) ParseTemp(text string) (diagram.Celsius, error) {
	number, unit := typed(text)
	meant, ok := s.asTemperature(unit)
	if !ok {
		number = text // it is refused as it stands
	}
	v, err := Number(number)
	if err != nil {
		return 0, err
	}
	s = meant
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
	number, unit := typed(text)
	meant, ok := s.asPressure(unit)
	if !ok {
		number = text // it is refused as it stands
	}
	s = meant
	v, err := Number(number)
	switch s.Pressure {
	case PSI:
		v *= kPaPerPSI
	case Bar:
		v *= kPaPerBar
	}
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
			return Number(text) // it is refused as it stands
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
		return 0, fmt.Errorf("%q is %w: write 70 or 70.5", strings.TrimSpace(text), ErrNotANumber)
	}
	return v, nil
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

// FromC is a temperature's number in the chosen unit.
func (s Set) FromC(c diagram.Celsius) float64 {
	if s.Temperature == F {
		return float64(c)*1.8 + 32
	}
	return float64(c)
}

// FromK is a difference's number in the chosen unit.
func (s Set) FromK(k diagram.DeltaK) float64 {
	if s.Temperature == F {
		return float64(k) * 1.8
	}
	return float64(k)
}

// FromKPa is a gauge pressure's number in the chosen unit.
func (s Set) FromKPa(p diagram.KPa) float64 {
	switch s.Pressure {
	case PSI:
		return float64(p) / kPaPerPSI
	case Bar:
		return float64(p) / kPaPerBar
	}
	return float64(p)
}

// PressureDigits is how many digits behind the point a pressure is worth.
func (s Set) PressureDigits() int {
	switch s.Pressure {
	case PSI:
		return 1
	case Bar:
		return 2
	}
	return 0
}

// FromKm is a distance's or a speed's number in the chosen unit, from km or km/h.
func (s Set) FromKm(km float64) float64 {
	if s.Distance == Miles {
		return km / kmPerMile
	}
	return km
}

// Short writes v with at most that many digits behind the point, and no
// negative zero.
func Short(v float64, digits int) string {
	p := math.Pow(10, float64(digits))
	v = math.Round(v*p)/p + 0
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// span has no word in it, since papers are in three languages; beside a minus
// sign a dash would be misread.
func span(low, high float64) string {
	if low < 0 || high < 0 {
		return Short(low, 0) + "…" + Short(high, 0)
	}
	return Short(low, 0) + "–" + Short(high, 0)
}

// Thousands writes v whole, its thousands apart.
func Thousands(v float64) string {
	s := Short(v, 0)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "\u00a0" + s[i:]
	}
	return s
}
