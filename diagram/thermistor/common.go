package thermistor

import (
	"math"

	"loopbook/diagram"
)

// CommonOhm is what a common coolant sensor has at c: 2502 ohm at 20 °C and 175.7 ohm at 100 °C (NTC20 and NTC100
// of testdata/trade/numbers.csv, published, V16), the logarithm straight in 1/T between and beyond.
func CommonOhm(c diagram.Celsius) float64 {
	const r20, r100 = 2502, 175.7
	at := func(c diagram.Celsius) float64 { return 1 / float64(c.Kelvin()) }
	beta := math.Log(r20/r100) / (at(20) - at(100))
	return r20 * math.Exp(beta*(at(c)-at(20)))
}
