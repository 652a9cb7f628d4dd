package kit

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// Temp binds a temperature.
func (f *Form) Temp(label string, at func(*cases.Case) **diagram.Celsius) fyne.CanvasObject {
	return f.temp(label, at, func(u units.Set) func(string) (diagram.Celsius, error) { return u.ParseTemp })
}

// CoolantTemp binds a temperature that an engine's coolant can have.
func (f *Form) CoolantTemp(label string, at func(*cases.Case) **diagram.Celsius) fyne.CanvasObject {
	return f.temp(label, at, ParseCoolant)
}

// FreezingTemp binds a temperature at which coolant freezes. None does above water's: what is missing there is
// the sign, and as water the coolant would be far too weak.
func (f *Form) FreezingTemp(label string, at func(*cases.Case) **diagram.Celsius) fyne.CanvasObject {
	return f.temp(label, at, func(u units.Set) func(string) (diagram.Celsius, error) {
		return Between(u.ParseTemp, -80, 0, u.TempUnit)
	})
}

func (f *Form) temp(label string, at func(*cases.Case) **diagram.Celsius, parse func(units.Set) func(string) (diagram.Celsius, error)) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + string(u.Temperature) },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), u.Temp) },
		func(c *cases.Case, text string, u units.Set) error { return Set(at(c), text, parse(u)) },
	)
}

// ParseCoolant reads a temperature that an engine's coolant can have.
func ParseCoolant(u units.Set) func(string) (diagram.Celsius, error) {
	return Between(u.ParseTemp, cases.CoolantLeastC, cases.CoolantMostC, u.TempUnit)
}

// Press binds a pressure above the air around.
func (f *Form) Press(label string, at func(*cases.Case) **diagram.KPa) fyne.CanvasObject {
	return f.press(label, 0, 500, at)
}

// CapMark binds what a cap is marked with: one in another unit than the field's is not kept.
func (f *Form) CapMark(label string, at func(*cases.Case) **diagram.KPa) fyne.CanvasObject {
	return f.press(label, cases.CapLeastKPa, cases.CapMostKPa, at)
}

func (f *Form) press(label string, low, high diagram.KPa, at func(*cases.Case) **diagram.KPa) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + string(u.Pressure) },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), u.Press) },
		func(c *cases.Case, text string, u units.Set) error {
			return Set(at(c), text, Between(u.ParsePressure, low, high, u.Press))
		},
	)
}

// Dist binds a distance kept in kilometres.
func (f *Form) Dist(label string, at func(*cases.Case) **float64) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + string(u.Distance) },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), u.Dist) },
		func(c *cases.Case, text string, u units.Set) error {
			return Set(at(c), text, func(text string) (float64, error) {
				km, err := Between(u.ParseDist, 0, 1e7, u.Dist)(text)
				if errors.Is(err, units.ErrNotANumber) {
					err = fmt.Errorf("%q is %w: %s", text, units.ErrNotANumber, L("window.kit.write-distance"))
				}
				return km, err
			})
		},
	)
}

// Volume binds what a loop holds, kept in litres as near as anybody fills.
func (f *Form) Volume(label string, at func(*cases.Case) **float64) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + u.VolumeUnit() },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), volume(u)) },
		func(c *cases.Case, text string, u units.Set) error {
			return Set(at(c), text, Between(func(text string) (float64, error) {
				v, err := u.ParseVolume(text)
				return math.Round(v*100) / 100, err
			}, 0, 1000, volume(u)))
		},
	)
}

func volume(u units.Set) func(litres float64) string {
	return func(litres float64) string { return units.Short(u.FromL(litres), 2) }
}

// Height binds a height above the sea.
func (f *Form) Height(label string, at func(*cases.Case) **diagram.Metre) fyne.CanvasObject {
	write := func(u units.Set) func(diagram.Metre) string {
		return func(m diagram.Metre) string { return units.Short(u.FromM(m), 0) }
	}
	return f.Quantity(
		func(u units.Set) string { return label + ", " + u.HeightUnit() },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), write(u)) },
		func(c *cases.Case, text string, u units.Set) error {
			return Set(at(c), text, Between(u.ParseHeight, -500, 9000, write(u)))
		},
	)
}

// Number binds a number between two bounds, that parse reads.
func Number[T ~float64](f *Form, label string, parse func(string) (float64, error), low, high T, at func(*cases.Case) **T) fyne.CanvasObject {
	return f.Quantity(
		func(units.Set) string { return label },
		func(c *cases.Case, _ units.Set) string {
			return Written(*at(c), Plain[T])
		},
		func(c *cases.Case, text string, _ units.Set) error {
			return Set(at(c), text, Between(func(s string) (T, error) {
				v, err := parse(s)
				return T(v), err
			}, low, high, Plain[T]))
		},
	)
}

// What a round of the case format can hold, and a freeze frame or a row of a
// warm-up no more.
const (
	mostRPM = 2e4
	mostKmh = 500
)

// leastRPM is what no engine that runs falls under (judgement: idles are 600 and more): less is a temperature
// in the wrong field.
const leastRPM = 300

// ParseRPM reads an engine's speed.
func ParseRPM(text string) (float64, error) {
	rpm, err := Between(units.Revs().Parse, 0, mostRPM, Plain[float64])(text)
	if err == nil && rpm > 0 && rpm < leastRPM {
		return 0, fmt.Errorf("%s is no engine's speed: write 0, or from %d", Plain(rpm), leastRPM)
	}
	return rpm, err
}

// ParseSpeed lets a set read a speed, in km/h.
func ParseSpeed(u units.Set) func(text string) (float64, error) {
	return Between(u.ParseDist, 0, mostKmh, u.Dist)
}

// Written writes a value that may not be known.
func Written[T any](v *T, write func(T) string) string {
	if v == nil {
		return ""
	}
	return write(*v)
}

// Set reads text into a value; no text is "not known".
func Set[T any](at **T, text string, parse func(string) (T, error)) error {
	if text == "" {
		*at = nil
		return nil
	}
	v, err := parse(text)
	if err == nil {
		*at = &v
	}
	return err
}

// Plain writes a number with all its figures.
func Plain[T ~float64](v T) string { return strconv.FormatFloat(float64(v), 'f', -1, 64) }

// Between lets parse take only what lies between two bounds, which are named, as
// write has them, to whoever typed something else or no number at all.
func Between[T ~float64](parse func(string) (T, error), low, high T, write func(T) string) func(string) (T, error) {
	return func(text string) (T, error) {
		v, err := parse(text)
		switch {
		case errors.Is(err, units.ErrNotANumber):
			err = fmt.Errorf("%q is %w: write %s to %s", text, units.ErrNotANumber, grouped(write(low)), grouped(write(high)))
		case err != nil: // beyond bounds of parse's own, which may be wider
			err = fmt.Errorf("%s can't be: write %s to %s", strings.TrimSpace(text), grouped(write(low)), grouped(write(high)))
		case !(v >= low && v <= high):
			err = fmt.Errorf("%s can't be: write %s to %s", write(v), grouped(write(low)), grouped(write(high)))
		}
		return v, err
	}
}

// grouped is a bound with its thousands apart where it is long: nobody counts seven noughts.
func grouped(bound string) string {
	if n, err := strconv.Atoi(bound); err == nil && n >= 1e5 {
		return units.Thousands(float64(n))
	}
	return bound
}
