package likelihood

import (
	"fmt"
	"io/fs"
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

func (t *Tables) readPrior(files fs.FS) error {
	causes := cases.Words[cases.Cause]()
	t.prior = newVector()
	sum := 0.0
	err := readEach(files, priorFile, vocabulary[cases.Cause]{"cause", causes}, func(r priorRow) cases.Cause { return r.Cause },
		func(r priorRow) error {
			if !(r.PerThousand > 0) {
				return fmt.Errorf("per_1000: %g must be above 0", r.PerThousand)
			}
			t.prior[slices.Index(causes, r.Cause)] = r.PerThousand / 1000
			sum += r.PerThousand
			return r.grounds.check()
		})
	if err == nil && math.Abs(sum-1000) > 1e-6 {
		err = fmt.Errorf("%s: per_1000 sums to %g, not to 1000: %w", priorFile, sum, ErrData)
	}
	return err
}
