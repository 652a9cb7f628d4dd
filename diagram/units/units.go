// Package units writes quantities in the units that a person has chosen and
// reads what they type.
//
// Everything inside the program stays in degrees Celsius, kilopascals,
// kilometres, litres and metres; only words for people pass through here.
package units

import (
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
	return s.Press(p) + " " + string(s.Pressure)
}

// Press writes a pressure without its unit.
func (s Set) Press(p diagram.KPa) string { return Short(s.FromKPa(p), s.PressureDigits()) }

// Dist writes a distance given in km, or a speed in km/h, whole and without its unit.
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
	return s.Dist(kmh) + " " + s.SpeedUnit()
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

// HeightUnit is what a height above the sea is measured in: feet beside °F.
func (s Set) HeightUnit() string {
	if s.Temperature == F {
		return "ft"
	}
	return "m"
}

// FromM is a height's number in that unit.
func (s Set) FromM(m diagram.Metre) float64 { return float64(m) / Metres().of[s.HeightUnit()] }

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
	for i := len(s) - 3; i > 0 && s[i-1] != '-'; i -= 3 {
		s = s[:i] + "\u00a0" + s[i:]
	}
	return s
}
