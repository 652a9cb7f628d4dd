package checks

import (
	"errors"
	"strconv"

	"loopbook/diagram/units"
)

var errNegative = errors.New("below nothing can't be")

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func notNegative(text string) (float64, error) {
	v, err := units.Number(text)
	if err == nil && v < 0 {
		err = errNegative
	}
	return v, err
}
