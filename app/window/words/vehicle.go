package words

import (
	"strconv"
	"strings"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// Vehicle is what is known of the vehicle and its loop, in one line.
func Vehicle(c cases.Case, u units.Set) string {
	v := c.Vehicle
	words := []string{strings.TrimSpace(strings.Join([]string{v.Make, v.Model, v.Engine}, " "))}
	if v.Year != nil {
		words = append(words, strconv.Itoa(*v.Year))
	}
	if v.OdometerKm != nil {
		words = append(words, u.DistUnit(*v.OdometerKm))
	}
	if t := c.Loop.ThermostatOpensC; t != nil {
		words = append(words, kit.L("window.frame.thermostat", u.TempUnit(*t)))
	}
	if p := c.Loop.CapKPa; p != nil {
		words = append(words, kit.L("window.frame.cap", u.PressureUnit(*p)))
	}
	known := words[:0]
	for _, w := range words {
		if w != "" {
			known = append(known, w)
		}
	}
	if len(known) == 0 {
		return kit.L("window.frame.no-vehicle")
	}
	return strings.Join(known, " · ")
}
