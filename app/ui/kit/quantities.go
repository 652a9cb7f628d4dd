package kit

import (
	"errors"
	"strconv"

	"fyne.io/fyne/v2"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

var errRange = errors.New("this can't be")

// Temp binds a temperature.
func (f *Form) Temp(label string, at func(*cases.Case) **diagram.Celsius) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + string(u.Temperature) },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), u.Temp) },
		func(c *cases.Case, text string, u units.Set) error { return Set(at(c), text, u.ParseTemp) },
	)
}

// Press binds a pressure above the air around.
func (f *Form) Press(label string, at func(*cases.Case) **diagram.KPa) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + string(u.Pressure) },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), u.Press) },
		func(c *cases.Case, text string, u units.Set) error {
			return Set(at(c), text, between(u.ParsePressure, 0, 500))
		},
	)
}

// Dist binds a distance kept in kilometres.
func (f *Form) Dist(label string, at func(*cases.Case) **float64) fyne.CanvasObject {
	return f.Quantity(
		func(u units.Set) string { return label + ", " + string(u.Distance) },
		func(c *cases.Case, u units.Set) string { return Written(*at(c), u.Dist) },
		func(c *cases.Case, text string, u units.Set) error {
			return Set(at(c), text, between(u.ParseDist, 0, 1e7))
		},
	)
}

// Number binds a plain number between two bounds.
func Number[T ~float64](f *Form, label string, low, high T, at func(*cases.Case) **T) fyne.CanvasObject {
	return f.Quantity(
		func(units.Set) string { return label },
		func(c *cases.Case, _ units.Set) string {
			return Written(*at(c), func(v T) string { return strconv.FormatFloat(float64(v), 'f', -1, 64) })
		},
		func(c *cases.Case, text string, _ units.Set) error {
			return Set(at(c), text, between(func(s string) (T, error) {
				v, err := units.Number(s)
				return T(v), err
			}, low, high))
		},
	)
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

func between[T ~float64](parse func(string) (T, error), low, high T) func(string) (T, error) {
	return func(text string) (T, error) {
		v, err := parse(text)
		if err == nil && !(v >= low && v <= high) {
			err = errRange
		}
		return v, err
	}
}
