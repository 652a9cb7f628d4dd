package desk

import (
	"loopbook/app/mind"
	"loopbook/cases"
)

// remember keeps what was held likeliest when a verdict is given, so that the shop can
// see one day whether the chances hold. A ranking of what was measured after the repair,
// or of nothing, is no guess.
func (d *Desk) remember(before, after cases.Case) {
	verdict, a := after.Verdict.Cause, d.judging.answer
	if verdict == "" || verdict == before.Verdict.Cause || a.Case == nil || a.Case.ID != after.ID {
		return
	}
	if r := a.Thought.Ranking; !r.Blank && r.Stage == cases.BeforeRepair {
		if err := d.Store.SetGuess(d.ctx, after.ID, verdict, mind.GuessOf(r, verdict)); err != nil {
			d.Told(err)
		}
	}
}
