// Package coolant gives what a technician needs to know of the liquid in the
// loop: where it freezes, where it boils under its cap at that altitude, how
// much heat it carries, and how much to drain and add to change its strength.
//
// Strength is by volume per cent, as the trade and the case format have it,
// and mass per cent is a type of its own: to mix the two up costs 3 K of
// freezing point. Pressures are kilopascals, absolute or gauge by their type.
// A value outside a stated range is an error that wraps ErrRange.
package coolant

import (
	"errors"
	"math"

	"loopbook/diagram"
)

// ErrRange is wrapped by every error about a value outside the range that a
// formula or a table holds for.
var ErrRange = errors.New("outside the known range")

// Coefficients of region 4, IAPWS R7-97 (2012), table 34.
const (
	n1  = 0.11670521452767e4
	n2  = -0.72421316703206e6
	n3  = -0.17073846940092e2
	n4  = 0.12020824702470e5
	n5  = -0.32325550322333e7
	n6  = 0.14915108613530e2
	n7  = -0.48232657361591e4
	n8  = 0.40511340542057e6
	n9  = -0.23855557567849
	n10 = 0.65017534844798e3
)

// saturationKPa is the pressure at which water boils at t: equation 30. It holds
// from 273.15 K to 647.096 K.
func saturationKPa(t diagram.Kelvin) diagram.KPaAbs {
	v := float64(t) + n9/(float64(t)-n10)
	a := (v+n1)*v + n2
	b := (n3*v+n4)*v + n5
	c := (n6*v+n7)*v + n8
	root := 2 * c / (-b + math.Sqrt(b*b-4*a*c)) // the fourth root of MPa
	return diagram.KPaAbs(root * root * root * root * 1000)
}

// saturationK is where water boils at p: equation 31. It holds from 0.6112 kPa
// to 22 064 kPa.
func saturationK(p diagram.KPaAbs) diagram.Kelvin {
	b := math.Sqrt(math.Sqrt(float64(p) / 1000))
	e := (b+n3)*b + n6
	f := (n1*b+n4)*b + n7
	g := (n2*b+n5)*b + n8
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	return diagram.Kelvin((n10 + d - math.Sqrt((n10+d)*(n10+d)-4*(n9+n10*d))) / 2)
}
