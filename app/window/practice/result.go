package practice

import (
	"math"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/practice"
	"loopbook/diagram/say"
)

// result explains an answer.
func (t teller) result(a answered, played mind.Played, own mind.Way) view.Result {
	c, score := a.Whole(), a.score()
	d := view.Result{
		Good: score.Right, Head: kit.L("window.practice.was", a.Truth().Name()), Lesson: c.Lesson,
		Way: wayWords(c, played), Reasons: t.reasons(a.Truth(), a.named, played),
		Steps: stepWords(c, played.Steps), Own: stepWords(c, own.Steps),
	}
	d.Score = []string{
		kit.L("window.practice.said", a.named.Name(), math.Round(100*a.confidence)),
		kit.L("window.practice.score-" + string(score.Verdict())),
		kit.L("window.practice.bits", signed(score.Bits), signed(score.Most), kit.Chance(score.TruthP)),
	}
	if score.None {
		d.Score = []string{kit.L("window.practice.score-none")}
	}
	d.Minutes = kit.L("window.practice.took", minutesText(a.Minutes()), minutesText(own.Minutes))
	d.OwnWords = kit.L("window.practice.own-text", minutesText(own.Minutes))
	if !own.Settled {
		d.Minutes = kit.L("window.practice.took-all", minutesText(a.Minutes()))
		d.OwnWords = kit.L("window.practice.own-unsettled")
	}
	return d
}

// wayWords say where the trainee's minutes went: how many led to the truth, and how many came after it was likely enough.
// What proves it isn't counted among those.
func wayWords(c cases.Case, p mind.Played) string {
	said := whereTo(p)
	if most, minutes := waited(p); minutes > 0 {
		said += " " + kit.L("window.practice.way-waited", boughtName(c, most), minutesText(minutes))
	}
	return said
}

func whereTo(p mind.Played) string {
	n, ever := p.Enough()
	if !ever {
		return kit.L("window.practice.way-open")
	}
	before, after, checks := 0.0, 0.0, 0
	for i, b := range p.Steps {
		switch {
		case i <= n:
			before += b.Bought.Minutes
		case !b.Proof:
			after += b.Bought.Minutes
			checks++
		}
	}
	chance := kit.Chance(p.Steps[n].TruthP)
	if checks == 0 {
		return kit.L("window.practice.way-straight", minutesText(before), chance)
	}
	return kit.L("window.practice.way-longer", minutesText(before), chance, checks, minutesText(after))
}

// alike reports whether two items are the same thing to look at, in whatever round.
func alike(a, b practice.Item) bool {
	return a.Kind == b.Kind && a.Point == b.Point && a.Check == b.Check
}

// leastWaited minutes are worth a word (judgement).
const leastWaited = 2

// waited is what would have told most for its minutes for longest while other things were looked at, and how long; the
// zero item: nothing did for as long as is worth a word.
func waited(p mind.Played) (most practice.Item, minutes float64) {
	since := 0.0
	for n, b := range p.Steps {
		if n > 0 {
			if last := p.Steps[n-1].Then; last != (practice.Item{}) && !alike(last, b.Bought) {
				since += b.Bought.Minutes
				if since > minutes {
					most, minutes = last, since
				}
			}
			if took := alike(p.Steps[n-1].Then, b.Bought); took || !alike(p.Steps[n-1].Then, b.Then) {
				since = 0
			}
		}
	}
	if minutes < leastWaited {
		return practice.Item{}, 0
	}
	return most, minutes
}

// mostReasons are told for the truth, and against a wrong answer.
const mostReasons = 3

// reasons are what the evidence that was bought says for the truth and against what was named instead.
func (t teller) reasons(truth, named cases.Cause, p mind.Played) (out []view.Reasons) {
	by := say.English().With(t.desk.Units)
	list := func(title, none string, reasons []diagnosis.Reason) {
		one := view.Reasons{Title: title}
		for _, r := range reasons[:min(len(reasons), mostReasons)] {
			one.Lines = append(one.Lines, kit.L("window.practice.reason", by.Say(r.Words), by.Say(r.Times())))
		}
		if len(one.Lines) == 0 {
			one.Lines = []string{none}
		}
		out = append(out, one)
	}
	list(kit.L("window.practice.for", truth.Name()), kit.L("window.practice.for-none"), p.For)
	if named != "" && named != truth {
		list(kit.L("window.practice.against-named", named.Name()), kit.L("window.practice.against-none"), p.Against)
	}
	return out
}

func stepWords(c cases.Case, beliefs []mind.Belief) []view.Step {
	var out []view.Step
	for n, b := range beliefs {
		step := view.Step{Name: kit.L("window.practice.at-first"), Truth: b.TruthP, First: kit.L("window.practice.believes", kit.Chance(b.TruthP), b.First.Name())}
		if n > 0 {
			step.Name, step.Minutes = boughtName(c, b.Bought), minutesText(b.Bought.Minutes)
		}
		if b.Proof {
			step.Note = kit.L("window.practice.proves")
		}
		took := n+1 < len(beliefs) && alike(beliefs[n+1].Bought, b.Then)
		again := n > 0 && alike(beliefs[n-1].Then, b.Then)
		if b.Then != (practice.Item{}) && !took && !again {
			step.Note = kit.L("window.practice.then", boughtName(c, b.Then), minutesText(b.Then.Minutes))
		}
		out = append(out, step)
	}
	return out
}
