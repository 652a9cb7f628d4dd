package likelihood

import (
	"fmt"
	"math"
	"slices"

	"loopbook/cases"
)

const priorFile = "prior.json"

type priorRow struct {
	Cause       cases.Cause `json:"cause"`
	PerThousand float64     `json:"per_1000"`
	grounds
}

func (t *Tables) readPrior(text []byte) error {
	causes := cases.Words[cases.Cause]()
	t.prior = newVector()
	at := func(c cases.Cause) int { return slices.Index(causes, c) }
	sum := 0.0
	err := read(priorFile, text, func(r priorRow) error {
		i := at(r.Cause)
		if err := newWord("cause", r.Cause, causes, i >= 0 && t.prior[i] > 0); err != nil {
			return err
		}
		if !(r.PerThousand > 0) {
			return fmt.Errorf("per_1000: %g must be above 0", r.PerThousand)
		}
		t.prior[i] = r.PerThousand / 1000
		sum += r.PerThousand
		return r.grounds.check()
	})
	if err == nil {
		err = complete(priorFile, "cause", causes, func(c cases.Cause) bool { return t.prior[at(c)] > 0 })
	}
	if err == nil && math.Abs(sum-1000) > 1e-6 {
		err = fmt.Errorf("%s: per_1000 sums to %g, not to 1000: %w", priorFile, sum, ErrData)
	}
	return err
}
