package experience

import (
	"cmp"
	"slices"

	"loopbook/cases"
)

// backDays is how soon a vehicle that is brought again counts as having come back
// (judgement: a year, as many shops warrant their work).
const backDays = 365

const day = 24 * 3600 // seconds

// Return is a vehicle that was repaired and brought again.
type Return struct {
	First, Second int64 // keys of the cases
	Days          int
	Cause, Again  cases.Cause // what was found first, and then; empty: still open
}

// visit is one case of a known vehicle.
type visit struct {
	car    uint64
	opened int64
	key    int64
	cause  cases.Cause
}

// returns lists them, the latest first.
func returns(visits []visit) []Return {
	slices.SortFunc(visits, func(a, b visit) int {
		return cmp.Or(cmp.Compare(a.car, b.car), cmp.Compare(a.opened, b.opened), cmp.Compare(a.key, b.key))
	})
	type found struct {
		Return
		at int64
	}
	var list []found
	for i := 1; i < len(visits); i++ {
		a, b := visits[i-1], visits[i]
		days := (b.opened - a.opened) / day
		if a.car == b.car && a.cause != "" && a.cause != cases.Healthy && days <= backDays {
			list = append(list, found{Return{a.key, b.key, int(days), a.cause, b.cause}, b.opened})
		}
	}
	slices.SortFunc(list, func(a, b found) int { return cmp.Compare(b.at, a.at) })
	out := make([]Return, len(list))
	for i, f := range list {
		out[i] = f.Return
	}
	return out
}
