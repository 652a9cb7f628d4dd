package causes

import (
	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// Likely are the first causes in short, for the hose map, with the side of the repair that they are
// of and how far they may be read as the last word; none before there is anything to judge by.
func Likely(d *desk.Desk) (stage cases.Stage, first []kit.Likely, standing string) {
	a := d.Answer()
	return a.Thought.Ranking.Stage, likelyOf(d), standingOf(a)
}

func likelyOf(d *desk.Desk) []kit.Likely {
	a := d.Answer()
	if a.Case == nil || a.Thought.Ranking.Blank {
		return nil
	}
	var out []kit.Likely
	for _, c := range a.Thought.Ranking.Causes[:3] {
		out = append(out, kit.Likely{Name: c.Cause.Name(), Chance: c.Probability})
	}
	return out
}
