package causes

import (
	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// standingOf says how far the answer may be read as the last word.
func standingOf(a desk.Answer) string {
	if a.Case == nil {
		return ""
	}
	return kit.L("window.causes.standing-" + string(a.Standing))
}

// basisOf tells what the causes were weighed from.
func basisOf(a desk.Answer) string {
	r, f := a.Thought.Ranking, a.Thought.Found
	if r.Blank {
		return kit.L("window.causes.no-basis")
	}
	rounds, readings, tests := 0, 0, 0
	for i := range a.Case.Rounds {
		if n := usable(f.Rounds[i]); n > 0 && r.Stage.Holds(a.Case.Rounds[i].Stage) {
			rounds, readings = rounds+1, readings+n
		}
	}
	for i := range a.Case.Tests {
		if t := &a.Case.Tests[i]; evidence.Outcome(a.Case, t) != "" && r.Stage.Holds(t.Stage) {
			tests++
		}
	}
	from := []say.Text{say.Of("window.causes.rounds", rounds), say.Of("window.causes.readings", readings), say.Of("window.causes.logs", logsOf(a.Case, r.Stage))}
	if r.Stage == cases.BeforeRepair {
		from = append(from, say.Of("window.causes.symptoms", len(a.Case.Complaint.Symptoms)), say.Of("window.causes.codes", len(a.Case.Codes)))
	}
	all, tested := say.List(from...), say.Of("window.causes.tests", tests)
	switch {
	case r.Draws > 0:
		return kit.L("window.causes.basis-cars", all, tested, r.Stage.Text(), r.Draws)
	case a.Computing():
		return kit.L("window.causes.basis-no-cars", all, tested, r.Stage.Text())
	}
	return kit.L("window.causes.basis", all, tested, r.Stage.Text())
}

// usable is how many of a round's readings weigh: those to be repeated don't.
func usable(r evidence.Round) (n int) {
	for _, reading := range r.Readings {
		if reading.Usable() {
			n++
		}
	}
	return n
}

// logsOf is how many warm-ups are of that side of the repair.
func logsOf(c *cases.Case, stage cases.Stage) int {
	n := 0
	for i := range c.Logs {
		if l := &c.Logs[i]; len(l.EctC) > 0 && stage.Holds(l.Stage) {
			n++
		}
	}
	return n
}
