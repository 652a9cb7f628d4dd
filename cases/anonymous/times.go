package anonymous

import (
	"fmt"
	"time"

	"loopbook/cases"
)

// times moves the case to the first of its month: the season stays, the day goes,
// and so does the zone.
func (m *maker) times(c *cases.Case) {
	first := c.Opened
	for _, r := range c.Rounds {
		if t := r.Taken; !t.IsZero() && (first.IsZero() || t.Before(first)) {
			first = t
		}
	}
	if first.IsZero() {
		return
	}
	month := time.Date(first.Year(), first.Month(), 1, 0, 0, 0, 0, time.UTC)
	move := func(where string, t *time.Time) {
		if t.IsZero() {
			return
		}
		was := *t
		*t = month.Add(was.Sub(first)).UTC().Truncate(time.Minute)
		m.goes(Times, where, was.Format(time.RFC3339), t.Format(time.RFC3339))
	}
	move("opened", &c.Opened)
	for i := range c.Rounds {
		move(fmt.Sprintf("rounds[%d].taken", i), &c.Rounds[i].Taken)
	}
}
