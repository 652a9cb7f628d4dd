package window

import (
	"math"
	"slices"

	"loopbook/app/desk"
	"loopbook/app/mind"
	"loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report/picture"
)

// causesOf is what the desk knows of the causes, ready to be shown.
func causesOf(d *desk.Desk) causes.Data {
	a := d.Answer()
	out := causes.Data{Flat: d.Odds.Flat, Learn: d.Odds.Learns(), Confirmed: d.Odds.Cases()}
	if a.Case == nil {
		return out
	}
	for _, c := range a.Thought.Ranking.Causes {
		out.Causes = append(out.Causes, causes.Cause{Cause: c.Cause, Probability: c.Probability})
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

func reasonLines(reasons []diagnosis.Reason, u units.Set) []causes.Reason {
	by, out := say.English().With(u), make([]causes.Reason, len(reasons))
	for i, r := range reasons {
		weight := math.Abs(math.Log(r.Factor)) / math.Log(fullWeight)
		out[i] = causes.Reason{Words: by.Say(r.Words), Times: by.Say(r.Times()), Weight: min(weight, 1)}
	}
	return out
}

// mostPoints of hoses are named among the next checks.
const mostPoints = 4

func checkLines(t mind.Thought, round string, u units.Set) []causes.Check {
	doubt := t.Ranking.Doubt()
	out := make([]causes.Check, 0, len(t.Next))
	points, told := 0, map[string]bool{}
	for _, c := range besideless(t) {
		line := checkLine(c, u)
		line.Worth = worth(c, doubt)
		if c.Point != "" {
			line.Title = kit.L("window.causes.read-point", say.Place(c.Point))
			if points++; points > mostPoints {
				continue
			}
			line.Needs = kit.L("window.causes.in-round", round)
			if told[line.Text] { // how it is done stands under the first
				line.Text, line.Caution = "", ""
			}
			told[line.Text] = true
		}
		out = append(out, line)
	}
	return out
}

// besideless are the next checks without the one that stands with the second fault.
func besideless(t mind.Thought) []diagnosis.Check {
	b := t.Beside
	return slices.DeleteFunc(slices.Clone(t.Next), func(c diagnosis.Check) bool {
		return b != nil && len(b.Next) > 0 && b.Next[0].Check.Check == c.Check.Check
	})
}

// worth says what a check is good for: a proof hardly settles what is as good as settled.
func worth(c diagnosis.Check, doubt float64) string {
	if c.Proof {
		return kit.L("window.causes.proves")
	}
	return kit.L("window.causes.settles", 100*min(c.Bits/doubt, 1))
}

// orderOf says in which order the checks stand.
func orderOf(next []diagnosis.Check) string {
	if len(next) > 0 && next[0].Proof {
		return kit.L("window.causes.proof-order")
	}
	return kit.L("window.causes.next-order")
}

func checkLine(c diagnosis.Check, u units.Set) causes.Check {
	by := say.English().With(u)
	return causes.Check{
		Check: c.Check.Check, Point: c.Point,
		Title: by.Say(c.Title()), Text: by.Say(c.Text()), Needs: by.Say(c.Needs.Text()),
		Minutes: kit.L("window.minutes", c.Minutes), Caution: by.Say(c.Caution()),
	}
}

// besideLine is what may be a second fault, with the check that tells most of it.
func besideLine(b *diagnosis.Beside, u units.Set) *causes.Beside {
	if b == nil {
		return nil
	}
	out := &causes.Beside{Text: say.English().With(u).Say(b.Words())}
	if len(b.Next) > 0 {
		line := checkLine(b.Next[0], u)
		line.Worth = kit.L("window.causes.tells-second")
		out.Check = &line
	}
	return out
}

// roundToRead is the name of the round in which a hose is read next; "" where there is none.
func roundToRead(a desk.Answer) string {
	i := judgedRound(a.Grounds.Plan, -1)
	if i < 0 {
		return ""
	}
	return kit.RoundName(a.Case.Rounds[i], i)
}

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
		if n := len(f.Rounds[i].Readings); n > 0 && diagnosis.StageOfRound(a.Case, i) == r.Stage {
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
	case readings > 0:
		return kit.L("window.causes.basis-no-cars", all, tested, r.Stage.Text())
	}
	return kit.L("window.causes.basis", all, tested, r.Stage.Text())
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

// likelyOf are the first causes in short, for the hose map; none before there is
// anything to judge by.
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

// putBeside puts what the chosen cause would show beside what the round shows, both
// of the case as it was weighed: the open one may have lost a round since.
func putBeside(d *desk.Desk, out *causes.Data, a desk.Answer) {
	l, err := diagram.LoopByID(a.Case.Loop.Layout)
	if err != nil {
		out.Compare = kit.L("window.causes.no-layout")
		return
	}
	round := judgedRound(a.Grounds.Plan, d.Round)
	for _, i := range a.Grounds.Plan.Rounds {
		out.Rounds = append(out.Rounds, causes.Round{Index: i, Name: kit.RoundName(a.Case.Rounds[i], i)})
	}
	out.Round = round
	state := picture.State(l, a.Case, a.Thought.Found, round, d.By())
	ghosts := picture.Ghosts(l, state, func(at diagram.Point) (evidence.Range, bool) {
		return diagnosis.Would(a.Case, a.Grounds.Plan, a.Crowd, a.Chosen.Cause, round, at)
	}, d.By())
	out.Ghosts = drawing.DrawGhosts(l, state, ghosts)
	out.Compare = compared(d, l, ghosts, a)
}

// judgedRound is the round that is shown, or the last of those that the causes
// are judged by where it isn't one of them; -1 where there is none.
func judgedRound(p diagnosis.Plan, shown int) int {
	last := -1
	for _, i := range p.Rounds {
		if last = i; i == shown {
			break
		}
	}
	return last
}

func compared(d *desk.Desk, l *diagram.Loop, ghosts map[diagram.Point]drawing.Ghost, a desk.Answer) string {
	agree, would, differ := 0, 0, []say.Text{}
	for _, at := range l.Points {
		g := ghosts[at.Point]
		if g.Would != "" {
			would++
		}
		switch g.Match {
		case drawing.Agrees:
			agree++
		case drawing.Differs:
			differ = append(differ, say.Place(at.Point))
		}
	}
	unit := string(d.Units.Temperature)
	switch {
	case a.Crowd == nil:
		return kit.L("window.causes.computing")
	case would == 0:
		return kit.L("window.causes.no-round")
	case agree+len(differ) == 0:
		return kit.L("window.causes.nothing-to-compare", unit)
	case agree == 1 && len(differ) == 0:
		return kit.L("window.causes.one-agrees", unit)
	case len(differ) == 0:
		return kit.L("window.causes.all-agree", agree, unit)
	}
	return kit.L("window.causes.differ", agree, agree+len(differ), say.Items(differ...))
}
