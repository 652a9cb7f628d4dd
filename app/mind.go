package main

import (
	"context"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics/ensemble"
)

// mind is all that judges a case, joined: findings by the model's ranges where
// its crowd is there and by the trade's table where not, and causes.
type mind struct {
	analyst *evidence.Analyst
	judge   *diagnosis.Judge
	crowds  *diagnosis.Crowds
}

func newMind() (*mind, error) {
	table, err := evidence.Shipped()
	if err != nil {
		return nil, err
	}
	m := &mind{crowds: &diagnosis.Crowds{Draws: diagnosis.UsualDraws}}
	if m.analyst, err = evidence.New(diagnosis.Expecter{Table: table, Crowds: m.crowds}); err != nil {
		return nil, err
	}
	m.judge, err = diagnosis.NewJudge()
	return m, err
}

// asked are the grounds of the stage that a case's causes are asked of.
func (m *mind) asked(c *cases.Case) grounds {
	return groundsOf(c, m.analyst.Analyse(c), diagnosis.StageOf(c))
}

// gather simulates what the case is judged by: every cause for the stage that
// causes are asked of, whose grounds are given, and healthy cars for the other one.
func (m *mind) gather(ctx context.Context, c *cases.Case, g grounds, soFar func(rounds *ensemble.Ensemble, part float64)) error {
	if _, err := m.gatherStage(ctx, g, soFar); err != nil {
		return err
	}
	if p, ok := otherPlan(c, g.plan.Stage); ok {
		_, err := m.crowds.Get(ctx, p, nil)
		return err
	}
	return nil
}

// gatherStage simulates every cause for a stage: its rounds, whose crowd it answers, then its
// logs. There is none where the layout isn't known. So far, if not nil, tells of the rounds' first cars
// and what part of all is there.
func (m *mind) gatherStage(ctx context.Context, g grounds, soFar func(rounds *ensemble.Ensemble, part float64)) (rounds *ensemble.Ensemble, err error) {
	plans := g.plans()
	for i, p := range plans {
		e, err := m.crowds.Get(ctx, p, func(first *ensemble.Ensemble, part float64) {
			if i == 0 {
				rounds = first
			}
			if soFar != nil {
				soFar(rounds, (float64(i)+part)/float64(len(plans)))
			}
		})
		if err != nil {
			return nil, err
		}
		if i == 0 {
			rounds = e
		}
	}
	return rounds, nil
}

// gatherRanges simulates healthy cars for all of the case's rounds, as far as they aren't
// there: the ranges of the whole crowds are the same, since these hold the same cars.
func (m *mind) gatherRanges(ctx context.Context, c *cases.Case, g grounds) error {
	for _, p := range roundPlans(c, g) {
		if m.crowds.Healthy(p) == nil {
			if _, err := m.crowds.Get(ctx, p.Healthy(), nil); err != nil {
				return err
			}
		}
	}
	return nil
}

// ranged reports whether all healthy cars are there, so that the case's ranges don't change.
func (m *mind) ranged(c *cases.Case, g grounds) bool {
	return !slices.ContainsFunc(roundPlans(c, g), func(p diagnosis.Plan) bool { return m.crowds.Healthy(p) == nil })
}

// roundPlans are the plans of a case's rounds, of one stage or both.
func roundPlans(c *cases.Case, g grounds) []diagnosis.Plan {
	var out []diagnosis.Plan
	if g.known && len(g.plan.Rounds) > 0 {
		out = append(out, g.plan)
	}
	if p, ok := otherPlan(c, g.plan.Stage); ok {
		out = append(out, p)
	}
	return out
}

// rank judges a stage by its rounds' crowd, which may be nil, and by those of its logs that are
// there.
func (m *mind) rank(c *cases.Case, found evidence.Findings, g grounds, crowd *ensemble.Ensemble, prior diagnosis.Prior) diagnosis.Ranking {
	r := m.judge.Rank(c, found, g.plan, crowd, prior)
	for _, l := range g.logs {
		if e := m.crowds.Kept(l.Plan); e != nil {
			r = r.WithLog(l, e)
		}
	}
	return r
}

// thought is a case's findings with its causes and what to do next.
type thought struct {
	found   evidence.Findings
	ranking diagnosis.Ranking
	next    []diagnosis.Check
	beside  *diagnosis.Beside // nil: nothing is left open
}

// think judges the case by the crowds that are there, each cause with its
// reasons.
func (m *mind) think(c *cases.Case, prior diagnosis.Prior) thought {
	g := m.asked(c)
	t := m.weigh(c, g, m.crowd(g), prior)
	t.ranking.Explain(len(t.ranking.Causes))
	return t
}

// crowd is the whole crowd of a stage's rounds, or nil.
func (m *mind) crowd(g grounds) *ensemble.Ensemble {
	if !g.known {
		return nil
	}
	return m.crowds.Kept(g.plan)
}

// weigh judges the case by a crowd, which may be part of the whole or nil, and
// leaves the reasons out: they take longer than all the rest.
func (m *mind) weigh(c *cases.Case, g grounds, crowd *ensemble.Ensemble, prior diagnosis.Prior) thought {
	t := thought{found: m.analyst.Analyse(c)}
	t.ranking = m.rank(c, t.found, g, crowd, prior)
	t.next, t.beside = m.judge.Next(t.ranking), m.judge.Beside(t.ranking)
	return t
}
