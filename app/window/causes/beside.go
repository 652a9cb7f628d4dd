package causes

import (
	"loopbook/app/desk"
	view "loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// putBeside puts what the chosen cause would show beside what the round shows, both
// of the case as it was weighed: the open one may have lost a round since.
func putBeside(d *desk.Desk, out *view.Data, a desk.Answer) {
	l, err := diagram.LoopByID(a.Case.Loop.Layout)
	if err != nil {
		out.Compare = kit.L("window.causes.no-layout")
		return
	}
	round := JudgedRound(a.Grounds.Plan, d.Round)
	for _, i := range a.Grounds.Plan.Rounds {
		out.Rounds = append(out.Rounds, view.Round{Index: i, Name: kit.RoundName(a.Case.Rounds[i], i)})
	}
	out.Round = round
	state := picture.State(l, a.Case, a.Thought.Found, round, d.By())
	ghosts := picture.Ghosts(l, state, func(at diagram.Point) (evidence.Range, bool) {
		return a.Thought.Ranking.Would(a.Chosen.Cause, round, at)
	}, d.By())
	out.Ghosts = drawing.DrawGhosts(l, state, ghosts)
	out.Compare = compared(d, l, ghosts, a)
}

// JudgedRound is the round that is shown, or the last of those that the causes
// are judged by where it isn't one of them; -1 where there is none.
func JudgedRound(p diagnosis.Plan, shown int) int {
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
