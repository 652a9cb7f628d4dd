package cases

import "loopbook/diagram"

// What coolant in an engine's loop can be: the strongest mixture under the
// strongest usual cap boils below the upper limit, and is frozen above the lower
// one (judgement). A case may hold more, as a broken sensor shows; who types a
// coolant's or a thermostat's temperature is held to these.
const (
	CoolantLeastC diagram.Celsius = -50
	CoolantMostC  diagram.Celsius = 150
)

// CanBeCoolant reports whether c can be a temperature of an engine's coolant.
func CanBeCoolant(c diagram.Celsius) bool { return c >= CoolantLeastC && c <= CoolantMostC }

// OpenBelowC is where the cap stays shut: SF1 of testdata/trade/numbers.csv, published (T18), the stricter of two.
const OpenBelowC diagram.Celsius = 50
