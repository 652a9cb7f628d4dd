package coolant

import (
	"fmt"
	"math"

	"loopbook/diagram"
)

const waterMolar = 18.015268 // g/mol, IAPWS

// vapour holds the constants of a vapour pressure, ln(p/Pa) = a + b/T +
// c ln T + d Tⁿ with T in kelvins: Perry's Chemical Engineers' Handbook, 8th
// edition, table 2-8.
type vapour struct{ a, b, c, d, n float64 }

func (v vapour) kPa(t float64) float64 {
	return math.Exp(v.a+v.b/t+v.c*math.Log(t)+v.d*math.Pow(t, v.n)) / 1000
}

// BoilC is where the mixture boils at the pressure p: water by IAPWS, glycol
// by Perry, the two joined by Raoult's law. It holds from 20 to 700 kPa.
//
// Water is good to 0.001 K. Ethylene glycol keeps within 0.5 K of a maker's
// vapour pressures up to 80 % by mass and 2 K above. For propylene glycol no
// measured curve was found: tables of the trade agree to 2 K.
func (m Mixture) BoilC(p diagram.KPaAbs) (diagram.Celsius, error) {
	g, err := m.glycol()
	if err != nil {
		return 0, err
	}
	if !(p >= 20 && p <= 700) {
		return 0, fmt.Errorf("boiling point of %s at %g kPa: %w", m.Base, float64(p), ErrRange)
	}
	x := moleFraction(g.massAt(m.Strength), g.molar)
	return boil(p, func(t float64) float64 {
		return (1-x)*float64(saturationKPa(diagram.Kelvin(t))) + x*g.vapour.kPa(t)
	}).Celsius(), nil
}

// BoilUnderCapC is where the mixture boils under a cap that holds that much
// above the air of that geopotential altitude. See BoilC and Atmosphere for
// the ranges; a cap below zero is an error. A cap that is off holds 0.
func (m Mixture) BoilUnderCapC(holds diagram.KPa, altitude diagram.Metre) (diagram.Celsius, error) {
	air, err := Atmosphere(altitude)
	if err != nil {
		return 0, err
	}
	if !(holds >= 0) {
		return 0, fmt.Errorf("cap that holds %g kPa: %w", float64(holds), ErrRange)
	}
	return m.BoilC(air + diagram.KPaAbs(holds))
}

func moleFraction(s MassPercent, molar float64) float64 {
	n := float64(s) / molar
	return n / (n + float64(100-s)/waterMolar)
}

// boil finds where pressure(T) is p. The logarithm of a vapour pressure is
// nearly straight over 1/T, so the secant through two guesses closes fast.
func boil(p diagram.KPaAbs, pressure func(kelvin float64) float64) diagram.Kelvin {
	short := func(t float64) float64 { return math.Log(pressure(t) / float64(p)) }
	t0 := float64(saturationK(p)) // water boils first
	f0 := short(t0)
	t1 := t0 * (1 - f0/12) // d ln p / d ln T is about 12
	for i := 0; i < 20 && math.Abs(t1-t0) > 1e-7; i++ {
		f1 := short(t1)
		if f1 == f0 {
			break
		}
		t0, t1, f0 = t1, 1/(1/t1-f1*(1/t1-1/t0)/(f1-f0)), f1
	}
	return diagram.Kelvin(t1)
}
