package library

import (
	"math"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// enricher adds to a case's digest what its measurements come to. It judges by the
// trade's table alone, so that the same case has the same digest whatever was
// computed before.
type enricher struct {
	analyst *evidence.Analyst
	minutes map[string]float64 // of a check
}

func newEnricher() (*enricher, error) {
	analyst, err := evidence.Default()
	if err != nil {
		return nil, err
	}
	tables, err := likelihood.Shipped()
	if err != nil {
		return nil, err
	}
	e := &enricher{analyst, map[string]float64{}}
	for _, c := range tables.Checks() {
		e.minutes[c.Check] = c.Minutes
	}
	return e, nil
}

func (e *enricher) add(c *cases.Case, d *cases.Digest) {
	d.Deltas = deviations(c, e.analyst.Analyse(c))
	d.Minutes = e.spent(c)
}

// leastWidthK keeps a narrow range from making a small difference look large.
const leastWidthK = 5

// mostZ is where a deviation ends: beyond it is all the same.
const mostZ = 4

// deviations are the worst of each difference over the rounds before the repair.
func deviations(c *cases.Case, f evidence.Findings) []cases.Deviation {
	var out []cases.Deviation
	for _, x := range f.Deltas {
		if x.State == evidence.Unknown || c.Rounds[x.Round].Stage == cases.AfterRepair {
			continue
		}
		z := deviation(float64(x.ValueK), x.ExpectedLowK, x.ExpectedHighK)
		out = keepWorst(out, cases.Deviation{Name: x.Name, Z: z})
	}
	return out
}

func keepWorst(list []cases.Deviation, d cases.Deviation) []cases.Deviation {
	for i := range list {
		if list[i].Name == d.Name {
			if math.Abs(d.Z) > math.Abs(list[i].Z) {
				list[i] = d
			}
			return list
		}
	}
	return append(list, d)
}

// deviation counts from the range's nearer end in widths of the range; an open range
// counts as twice the least width.
func deviation(v float64, low, high *diagram.DeltaK) float64 {
	width := 2.0 * leastWidthK
	if low != nil && high != nil {
		width = max(float64(*high-*low), leastWidthK)
	}
	z := 0.0
	switch {
	case low != nil && v < float64(*low):
		z = (v - float64(*low)) / width
	case high != nil && v > float64(*high):
		z = (v - float64(*high)) / width
	}
	return min(max(z, -mostZ), mostZ)
}

// spent is what the checks before the repair cost, in minutes; NaN where none is
// noted.
func (e *enricher) spent(c *cases.Case) float64 {
	sum := 0.0
	for i := range c.Rounds {
		if c.Rounds[i].Stage != cases.AfterRepair {
			sum += float64(len(c.Rounds[i].Readings)) * e.minutes[likelihood.HosePoint]
		}
	}
	for i := range c.Logs {
		if c.Logs[i].Stage != cases.AfterRepair {
			sum += e.minutes[likelihood.WarmUp]
		}
	}
	for i := range c.Tests {
		if c.Tests[i].Stage != cases.AfterRepair {
			sum += e.minutes[string(c.Tests[i].Kind)]
		}
	}
	if sum == 0 {
		return math.NaN()
	}
	return sum
}
