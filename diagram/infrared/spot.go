package infrared

import (
	"fmt"

	"loopbook/diagram"
)

// targetOverSpot: the target should be twice the spot wide, so that an aim a
// little off still sees nothing but the target. An instrument maker's rule,
// T12 in testdata/trade/sources.md.
const targetOverSpot = 2

// LargestDistance is how far a gun may be from a target of that width, for the
// gun's ratio of distance to spot (8 to 20 is common). A width or ratio not
// above zero is an error.
func LargestDistance(target diagram.Metre, distanceToSpot float64) (diagram.Metre, error) {
	if !(target > 0 && distanceToSpot > 0) {
		return 0, fmt.Errorf("target of %g m, distance to spot %g: %w", float64(target), distanceToSpot, ErrRange)
	}
	return target / targetOverSpot * diagram.Metre(distanceToSpot), nil
}
