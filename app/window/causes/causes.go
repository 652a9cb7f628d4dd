package causes

import (
	"math"

	"loopbook/app/desk"
	view "loopbook/app/ui/causes"
	"loopbook/cases/diagnosis"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// dataOf is what the desk knows of the causes, ready to be shown.
func dataOf(d *desk.Desk) view.Data {
	a := d.Answer()
	out := view.Data{Flat: d.Odds.Flat, Learn: d.Odds.Learns(), Confirmed: d.Odds.Cases()}
	if a.Case == nil {
		return out
	}
	for _, c := range a.Thought.Ranking.Causes {
		out.Causes = append(out.Causes, view.Cause{Cause: c.Cause, Probability: c.Probability})
	}
	out.Case, out.Verdict = a.Case.ID, d.Case.Verdict.Cause
	out.Chosen, out.Blank = a.Chosen.Cause, a.Thought.Ranking.Blank
	out.For, out.Against = reasonLines(a.Chosen.For, d.Units), reasonLines(a.Chosen.Against, d.Units)
	out.Checks = checkLines(a.Thought, roundToRead(a), d.Units)
	out.Beside = besideLine(a.Thought.Beside, d.Units)
	out.Order = orderOf(besideless(a.Thought))
	out.Next, _ = nextStep(&d.Case)
	out.Basis, out.Standing = basisOf(a), standingOf(a)
	putBeside(d, &out, a)
	return out
}

// fullWeight is the factor whose bar is full.
const fullWeight = 100

func reasonLines(reasons []diagnosis.Reason, u units.Set) []view.Reason {
	by, out := say.English().With(u), make([]view.Reason, len(reasons))
	for i, r := range reasons {
		weight := math.Abs(math.Log(r.Factor)) / math.Log(fullWeight)
		out[i] = view.Reason{Words: by.Say(r.Words), Times: by.Say(r.Times()), Weight: min(weight, 1)}
	}
	return out
}
