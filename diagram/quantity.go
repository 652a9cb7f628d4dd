// Package diagram holds the words of the field: the quantities that a cooling
// loop is described in, its points, and its layouts, which are data.
//
// Temperatures are degrees Celsius unless a name says otherwise; a temperature
// difference is its own type, in kelvins.
package diagram

import "math"

// Celsius is a temperature in degrees Celsius.
type Celsius float64

// Kelvin is a thermodynamic temperature in kelvins.
type Kelvin float64

// DeltaK is a temperature difference in kelvins.
type DeltaK float64

// KPa is a pressure in kilopascals above the air around (gauge).
type KPa float64

// KPaAbs is an absolute pressure in kilopascals.
type KPaAbs float64

// Metre is a length or an altitude in metres.
type Metre float64

// Litre is a volume in litres.
type Litre float64

const zeroCelsiusK = 273.15 // exact, by the definition of the degree Celsius

// Kelvin converts c to the thermodynamic scale.
func (c Celsius) Kelvin() Kelvin { return Kelvin(c + zeroCelsiusK) }

// Celsius converts k to degrees Celsius.
func (k Kelvin) Celsius() Celsius { return Celsius(k - zeroCelsiusK) }

// Minus is the difference from d to c, in kelvins.
func (c Celsius) Minus(d Celsius) DeltaK { return DeltaK(c - d) }

// Limits of a temperature that a case may hold, in degrees Celsius. Outside
// them a value is a slip of the pen (or Fahrenheit), not a temperature of a
// cooling loop.
const (
	MinC Celsius = -60
	MaxC Celsius = 400
)

// Plausible reports whether c can be a temperature of a cooling loop. NaN and
// the infinities are not.
func (c Celsius) Plausible() bool { return c >= MinC && c <= MaxC && !math.IsNaN(float64(c)) }
