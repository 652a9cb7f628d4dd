// Package thermistor reads a temperature off a sensor's resistance, by a curve
// through the points of its reference.
//
// The curve is that of Steinhart and Hart (1968), "Calibration curves for
// thermistors", Deep-Sea Research 15: 1/T = A + B ln R + C (ln R)³ with T in
// kelvins and R in ohms. Two points leave C at 0. A reference that no such
// curve follows (a sensor of another kind) is joined in straight lines of ln R.
package thermistor

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"loopbook/diagram"
)

// Point is one line of a table: a resistance, above 0 ohm, at a temperature.
type Point struct {
	C   diagram.Celsius
	Ohm float64
}

// Curve is a reference to read off.
type Curve struct {
	A, B, C float64        // of Steinhart and Hart; B and C for ln of ohms
	OffK    diagram.DeltaK // how far the formula passes the worst point
	points  []Point        // by falling resistance
}

// ErrPoints says that the points make no curve.
var ErrPoints = errors.New("a curve needs two resistances at two temperatures")

// ErrRange says that a resistance or temperature lies outside the reference.
var ErrRange = errors.New("outside the reference")

// smoothK is how far the formula may pass a point before the reference is
// taken for another kind of curve: published tables keep within 0.2 K
// (testdata/reference/thermistor.csv), rounding to three figures costs as much.
const smoothK = 1.5

// Fit puts a curve through a reference, by least squares in kelvins.
func Fit(reference []Point) (Curve, error) {
	c := Curve{points: append([]Point(nil), reference...)}
	for _, p := range c.points {
		if !(p.Ohm > 0) || math.IsInf(p.Ohm, 0) || !p.C.Plausible() {
			return Curve{}, fmt.Errorf("%g ohm at %g °C: %w", p.Ohm, float64(p.C), ErrPoints)
		}
	}
	slices.SortStableFunc(c.points, func(a, b Point) int { return cmp.Compare(b.Ohm, a.Ohm) })
	n := c.distinct()
	if n < 2 {
		return Curve{}, ErrPoints
	}
	k := leastSquares(c.points, min(n, 3))
	c.A, c.B, c.C = k[0], k[1], k[2]
	for _, p := range c.points {
		if off := c.formula(p.Ohm).Minus(p.C); !(math.Abs(float64(off)) <= math.Abs(float64(c.OffK))) {
			c.OffK = off
		}
	}
	return c, nil
}

// distinct is how many of the points have a resistance and a temperature of
// their own.
func (c Curve) distinct() int {
	n := 1
	for i := 1; i < len(c.points); i++ {
		if c.points[i].Ohm < c.points[i-1].Ohm && c.points[i].C != c.points[i-1].C {
			n++
		}
	}
	return min(n, len(c.points))
}

// Smooth reports whether the reference follows the formula.
func (c Curve) Smooth() bool {
	low, high := c.slope(c.points[len(c.points)-1].Ohm), c.slope(c.points[0].Ohm)
	return math.Abs(float64(c.OffK)) <= smoothK && low*high > 0
}

// slope is the sign of d(1/T)/d(ln R): one that changes makes no thermometer.
func (c Curve) slope(ohm float64) float64 {
	x := math.Log(ohm)
	return c.B + 3*c.C*x*x
}

// Read is the temperature at which the reference has that resistance. Outside
// the reference's resistances it is an error: a curve tells nothing beyond its
// points.
func (c Curve) Read(ohm float64) (diagram.Celsius, error) {
	if !(ohm <= c.points[0].Ohm && ohm >= c.points[len(c.points)-1].Ohm) {
		return 0, fmt.Errorf("%g ohm: %w", ohm, ErrRange)
	}
	return c.at(ohm), nil
}

// at runs on past the ends.
func (c Curve) at(ohm float64) diagram.Celsius {
	if c.Smooth() {
		return c.formula(ohm)
	}
	i := 1
	for i < len(c.points)-1 && (c.points[i].Ohm > ohm || c.points[i].Ohm == c.points[i-1].Ohm) {
		i++
	}
	a, b := c.points[i-1], c.points[i]
	return a.C + (b.C-a.C)*diagram.Celsius(math.Log(a.Ohm/ohm)/math.Log(a.Ohm/b.Ohm))
}

func (c Curve) formula(ohm float64) diagram.Celsius {
	x := math.Log(ohm)
	return diagram.Kelvin(1 / (c.A + c.B*x + c.C*x*x*x)).Celsius()
}

// Ohm is the reference's resistance at t, the inverse of Read.
func (c Curve) Ohm(t diagram.Celsius) (float64, error) {
	low, high := math.Log(c.points[len(c.points)-1].Ohm), math.Log(c.points[0].Ohm)
	atLow, atHigh := c.at(math.Exp(low)), c.at(math.Exp(high))
	if t < min(atLow, atHigh) || t > max(atLow, atHigh) {
		return 0, fmt.Errorf("%g °C: %w", float64(t), ErrRange)
	}
	for i := 0; i < 60; i++ { // halving: the curve runs one way
		mid := (low + high) / 2
		if (c.at(math.Exp(mid)) < t) == (atLow < atHigh) {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Exp((low + high) / 2), nil
}
