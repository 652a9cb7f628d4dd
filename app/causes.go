package main

import (
	"fmt"
	"math"
	"strings"

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

// causes is what the desk knows of the causes, ready to be shown.
func (d *desk) causes() causes.Data {
	a := d.judging.answer
	out := causes.Data{Flat: d.odds.flat, Learn: d.odds.learns(), Confirmed: d.odds.cases()}
	if a.c == nil {
		return out
	}
	for _, c := range a.thought.ranking.Causes {
		out.Causes = append(out.Causes, causes.Cause{Cause: c.Cause, Probability: c.Probability})
	}
	out.Case = a.c.ID
	out.Chosen, out.Blank = a.chosen.Cause, a.thought.ranking.Blank
	out.For, out.Against = reasonLines(a.chosen.For, d.units), reasonLines(a.chosen.Against, d.units)
	out.Checks = checkLines(a.thought, d.units)
	out.Basis = basis(a)
	d.compare(&out, a)
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

func checkLines(t thought, u units.Set) []causes.Check {
	by, doubt := say.English().With(u), 0.0
	for _, c := range t.ranking.Causes {
		if p := c.Probability; p > 0 {
			doubt -= p * math.Log2(p)
		}
	}
	out := make([]causes.Check, 0, len(t.next))
	points := 0
	for _, c := range t.next {
		line := causes.Check{
			Title: by.Say(c.Title()), Text: by.Say(c.Text()), Needs: by.Say(c.Needs.Text()),
			Minutes: fmt.Sprintf("%.0f min", c.Minutes),
			Worth:   fmt.Sprintf("takes away %.0f %% of the doubt", 100*min(c.Bits/doubt, 1)),
			Caution: by.Say(c.Caution()),
		}
		if c.Point != "" {
			line.Title = "Read the " + small(c.Point)
			if points++; points > mostPoints {
				continue
			}
			if points > 1 { // how it is done stands under the first
				line.Text, line.Needs, line.Caution = "", "", ""
			}
		}
		out = append(out, line)
	}
	return out
}

// small is a point's name inside a sentence.
func small(p diagram.Point) string { return say.Place(p).String() }

// basis tells what the causes were weighed from.
func basis(a answer) string {
	r, f := a.thought.ranking, a.thought.found
	if r.Blank {
		return "Nothing is measured, told or tested yet."
	}
	rounds, readings, tests := 0, 0, 0
	for i := range a.c.Rounds {
		if n := len(f.Rounds[i].Readings); n > 0 && diagnosis.StageOfRound(a.c, i) == r.Stage {
			rounds, readings = rounds+1, readings+n
		}
	}
	for i := range a.c.Tests {
		if t := &a.c.Tests[i]; evidence.Outcome(a.c, t) != "" && (t.Stage == r.Stage || t.Stage == "" && r.Stage == cases.BeforeRepair) {
			tests++
		}
	}
	words := []string{counted(rounds, "round"), counted(readings, "reading")}
	if r.Stage == cases.BeforeRepair {
		words = append(words, counted(len(a.c.Complaint.Symptoms), "symptom"), counted(len(a.c.Codes), "code"))
	}
	text := fmt.Sprintf("Weighed from %s and %s %s", strings.Join(words, ", "), counted(tests, "test"), r.Stage.Name())
	switch {
	case r.Draws > 0:
		return fmt.Sprintf("%s, by %d simulated cars of each cause.", text, r.Draws)
	case readings > 0:
		return text + "; temperatures don't count yet."
	}
	return text + "."
}

func counted(n int, thing string) string {
	switch n {
	case 0:
		return "no " + thing + "s"
	case 1:
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// likely are the first causes in short, for the hose map; none before there is
// anything to judge by.
func (d *desk) likely() []kit.Likely {
	a := d.judging.answer
	if a.c == nil || a.thought.ranking.Blank {
		return nil
	}
	var out []kit.Likely
	for _, c := range a.thought.ranking.Causes[:3] {
		out = append(out, kit.Likely{Name: c.Cause.Name(), Chance: c.Probability})
	}
	return out
}

// compare puts what the chosen cause would show beside what the round shows.
func (d *desk) compare(out *causes.Data, a answer) {
	l, err := diagram.LoopByID(d.c.Loop.Layout)
	if err != nil {
		out.Compare = "What a cause would show is known once the layout is chosen on the hose map."
		return
	}
	p, _ := diagnosis.PlanFor(a.c, a.thought.ranking.Stage)
	round := judgedRound(p, d.round)
	for _, i := range p.Rounds {
		name := d.c.Rounds[i].Label
		if name == "" {
			name = fmt.Sprintf("Round %d", i+1)
		}
		out.Rounds = append(out.Rounds, causes.Round{Index: i, Name: name})
	}
	out.Round = round
	state := picture.State(l, &d.c, d.found, round, d.by())
	ghosts := picture.Ghosts(l, state, func(at diagram.Point) (evidence.Range, bool) {
		return diagnosis.Would(a.c, p, a.crowd, a.chosen.Cause, round, at)
	}, d.by())
	out.Ghosts = drawing.DrawGhosts(l, state, ghosts)
	out.Compare = d.compared(l, ghosts, a)
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

func (d *desk) compared(l *diagram.Loop, ghosts map[diagram.Point]drawing.Ghost, a answer) string {
	agree, would, differ := 0, 0, []string{}
	for _, at := range l.Points {
		g := ghosts[at.Point]
		if g.Would != "" {
			would++
		}
		switch g.Match {
		case drawing.Agrees:
			agree++
		case drawing.Differs:
			differ = append(differ, small(at.Point))
		}
	}
	unit := " (" + string(d.units.Temperature) + ")."
	switch {
	case a.crowd == nil:
		return "What it would show comes as this loop is computed."
	case would == 0:
		return "No round has been walked yet."
	case agree+len(differ) == 0:
		return "Nothing to compare is measured in this round. Ranges hold nine of ten cars" + unit
	case agree == 1 && len(differ) == 0:
		return "The one reading agrees" + unit
	case len(differ) == 0:
		return "All " + counted(agree, "reading") + " agree" + unit
	}
	return fmt.Sprintf("%d of %d agree. Differs: %s.", agree, agree+len(differ), strings.Join(differ, "; "))
}
