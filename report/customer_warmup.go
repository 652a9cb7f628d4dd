package report

import (
	"loopbook/diagram/warmup"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

// mostCurve is the height of the customer's curve.
const mostCurve = 210

// warmUp is how the engine warmed up, for a case of which no hose was read: then it is all that
// there is to be seen.
func (c *customer) warmUp(room float64) error {
	curve, ok := c.curve()
	if !ok {
		return nil
	}
	c.y += 6
	err := c.place(curve, 1, min(room-18, mostCurve))
	c.y += 8
	return err
}

// curve is the last warm-up, beside its like of before the repair where there is one.
func (c *customer) curve() (chart.Lines, bool) {
	if p := c.m.Proof; p != nil {
		for _, l := range p.Logs {
			if l.Before >= 0 && l.After >= 0 {
				return c.m.bothWarmUps(l, c.by), true
			}
		}
	}
	for i := len(c.c.Logs) - 1; i >= 0; i-- {
		if l := &c.c.Logs[i]; len(l.EctC) > 1 {
			return picture.WarmUp(c.c, l, warmup.Result{TargetC: c.f.WarmUps[i].Result.TargetC}, nil, c.by), true
		}
	}
	return chart.Lines{}, false
}
