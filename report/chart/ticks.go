package chart

import (
	"strconv"

	"gonum.org/v1/plot"
)

// shortTicks are the usual ticks with numbers as short as they can be: the usual
// ones write 100.00 beside 50.00.
type shortTicks struct{ plot.DefaultTicks }

func (t shortTicks) Ticks(low, high float64) []plot.Tick {
	ticks := t.DefaultTicks.Ticks(low, high)
	for i, tick := range ticks {
		if tick.Label != "" {
			ticks[i].Label = strconv.FormatFloat(tick.Value, 'g', 5, 64)
		}
	}
	return ticks
}
