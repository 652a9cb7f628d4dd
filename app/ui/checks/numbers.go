package checks

import (
	"errors"
	"fmt"
	"strconv"

	"loopbook/diagram/units"
)

var errNegative = errors.New("below nothing can't be")

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// What no thermostat lifts by, and no sensor of an engine has (judgement): a
// number beyond is a slip of the hand.
const (
	mostLiftMM = 30
	mostOhm    = 1e6
)

// upTo reads a number from 0 to most.
func upTo(most float64) func(string) (float64, error) {
	return func(text string) (float64, error) {
		v, err := units.Number(text)
		switch {
		case err == nil && v < 0:
			err = errNegative
		case err == nil && v > most:
			err = fmt.Errorf("more than %s can't be", plain(most))
		}
		return v, err
	}
}
