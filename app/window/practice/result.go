package practice

import (
	"math"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/cases"
	"loopbook/cases/practice"
)

// result explains an answer.
func (t teller) result(s *practice.Session, score practice.Score, named cases.Cause, confidence float64, beliefs []mind.Belief, own mind.Way, left int) view.Result {
	d := view.Result{Good: score.Right, Steps: stepWords(s.Whole(), beliefs), Own: stepWords(s.Whole(), own.Steps), Lesson: s.Whole().Lesson}
	d.Head = kit.L("window.practice.was", s.Truth().Name())
	d.Score = []string{
		kit.L("window.practice.said", named.Name(), math.Round(100*confidence)),
		kit.L("window.practice.score-" + string(score.Verdict())),
		kit.L("window.practice.bits", signed(score.Bits), signed(score.Most), kit.Chance(score.TruthP)),
	}
	if score.None {
		d.Score = []string{kit.L("window.practice.score-none")}
	}
	d.Minutes = kit.L("window.practice.took", minutesText(s.Minutes()), minutesText(own.Minutes))
	d.OwnWords = kit.L("window.practice.own-text", minutesText(own.Minutes))
	if !own.Settled {
		d.Minutes = kit.L("window.practice.took-all", minutesText(s.Minutes()))
		d.OwnWords = kit.L("window.practice.own-unsettled")
	}
	if left > 0 {
		d.Next = kit.L("window.practice.next", left)
	}
	return d
}

func stepWords(c cases.Case, beliefs []mind.Belief) []view.Step {
	var out []view.Step
	for n, b := range beliefs {
		step := view.Step{Name: kit.L("window.practice.at-first"), Truth: b.TruthP, First: kit.L("window.practice.believes", kit.Chance(b.TruthP), b.First.Name())}
		if n > 0 {
			step.Name, step.Minutes = boughtName(c, b.Bought), minutesText(b.Bought.Minutes)
		}
		out = append(out, step)
	}
	return out
}
