package coolant

import (
	"fmt"
	"math"

	"loopbook/diagram"
)

// Atmosphere is the pressure of the standard atmosphere at a geopotential
// altitude: US Standard Atmosphere 1976, equation 33a, which ISO 2533 shares.
//
// It holds in the troposphere, to 11 000 m, and here down to −500 m, for the
// law runs on below the sea; outside is an error. A map's altitude is
// geometric: taken as geopotential it costs 13 Pa at 3000 m, which moves no
// boiling point by 0.01 K. The weather moves the pressure by 3 kPa either way.
func Atmosphere(altitude diagram.Metre) (diagram.KPaAbs, error) {
	if !(altitude >= -500 && altitude <= 11000) {
		return 0, fmt.Errorf("standard atmosphere at %g m: %w", float64(altitude), ErrRange)
	}
	const (
		seaKPa, seaK = 101.325, 288.15
		lapse        = 0.0065                                 // K/m
		exponent     = 9.80665 * 28.9644 / (8314.32 * 0.0065) // g₀ M / (R* L)
	)
	return diagram.KPaAbs(seaKPa * math.Pow(1-lapse*float64(altitude)/seaK, exponent)), nil
}
