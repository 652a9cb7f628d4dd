package coolant

import (
	"fmt"

	"loopbook/diagram"
)

// Change is how many litres to drain from a full system, and then to fill up
// again with coolant of the strength with, to bring it from the strength have
// to the strength want. Concentrate is 100 %, water 0 %.
//
// The sum takes the system for well mixed when it is drained and volumes for
// additive; glycol and water shrink by less than 1 % on mixing. That a drain
// cock may not let so much out is for the technician to see. A volume not
// above zero, a share outside 0 to 100 %, or a strength that this coolant
// can't bring about is an error.
func Change(capacity diagram.Litre, have, want, with VolumePercent) (diagram.Litre, error) {
	if !(capacity > 0) {
		return 0, fmt.Errorf("system of %g litres: %w", float64(capacity), ErrRange)
	}
	for _, s := range []VolumePercent{have, want, with} {
		if !(s >= 0 && s <= 100) {
			return 0, fmt.Errorf("strength of %g %%: %w", float64(s), ErrRange)
		}
	}
	if want == have {
		return 0, nil
	}
	part := (want - have) / (with - have)
	if !(part >= 0 && part <= 1) {
		return 0, fmt.Errorf("from %g %% to %g %% with %g %%: %w",
			float64(have), float64(want), float64(with), ErrRange)
	}
	return capacity * diagram.Litre(part), nil
}
