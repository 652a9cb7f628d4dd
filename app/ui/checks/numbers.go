package checks

import (
	"loopbook/app/ui/kit"
	"loopbook/diagram/units"
)

// What no thermostat lifts by, and no sensor of an engine has (judgement): a
// number beyond is a slip of the hand.
const (
	mostLiftMM = 30
	mostOhm    = 1e6
)

// upTo reads a number from 0 to most.
func upTo(most float64) func(string) (float64, error) {
	return kit.Between(units.Number, 0, most, kit.Plain[float64])
}
