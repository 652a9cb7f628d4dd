// Package mind judges cases: findings by the ranges of simulated cars, causes with their reasons,
// the next checks, what papers say, and the program's own way through a case that is practised on.
// Commands and the window both ask it; it knows no widget.
package mind

import (
	"context"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics/ensemble"
)

// Mind is all that judges a case, joined: findings by the model's ranges where
// its crowd is there and by the trade's table where not, and causes.
type Mind struct {
	Analyst *evidence.Analyst
	judge   *diagnosis.Judge
	Crowds  *diagnosis.Crowds
}

// New is a mind that has simulated nothing yet.
func New() (*Mind, error) {
	table, err := evidence.Shipped()
	if err != nil {
		return nil, err
	}
	m := &Mind{Crowds: &diagnosis.Crowds{Draws: diagnosis.UsualDraws}}
	if m.Analyst, err = evidence.New(diagnosis.Expecter{Table: table, Crowds: m.Crowds}); err != nil {
		return nil, err
	}
	m.judge, err = diagnosis.NewJudge()
	return m, err
}

// Asked are the grounds of the stage that a case's causes are asked of.
func (m *Mind) Asked(c *cases.Case) Grounds {
	return GroundsOf(c, m.Analyst.Analyse(c), diagnosis.StageOf(c))
}

// Gather simulates what the case is judged by: every cause for the stage that
// causes are asked of, whose grounds are given, and healthy cars for the other one.
func (m *Mind) Gather(ctx context.Context, c *cases.Case, g Grounds, soFar func(rounds *ensemble.Ensemble, part float64)) error {
	if _, err := m.gatherStage(ctx, g, soFar); err != nil {
		return err
	}
	if p, ok := otherPlan(c, g.Plan.Stage); ok {
		_, err := m.Crowds.Get(ctx, p, nil)
		return err
	}
	return nil
}

// gatherStage simulates every cause for a stage: its rounds, whose crowd it answers, then its
// logs. There is none where the layout isn't known. So far, if not nil, tells of the rounds' first cars
// and what part of all is there.
func (m *Mind) gatherStage(ctx context.Context, g Grounds, soFar func(rounds *ensemble.Ensemble, part float64)) (rounds *ensemble.Ensemble, err error) {
	plans := g.Plans()
	for i, p := range plans {
		e, err := m.Crowds.Get(ctx, p, func(first *ensemble.Ensemble, part float64) {
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

// GatherRanges simulates healthy cars for all of the case's rounds, as far as they aren't
// there: the ranges of the whole crowds are the same, since these hold the same cars.
func (m *Mind) GatherRanges(ctx context.Context, c *cases.Case, g Grounds) error {
	for _, p := range roundPlans(c, g) {
		if m.Crowds.Healthy(p) == nil {
			if _, err := m.Crowds.Get(ctx, p.Healthy(), nil); err != nil {
				return err
			}
		}
	}
	return nil
}

// Ranged reports whether all healthy cars are there, so that the case's ranges don't change.
func (m *Mind) Ranged(c *cases.Case, g Grounds) bool {
	return !slices.ContainsFunc(roundPlans(c, g), func(p diagnosis.Plan) bool { return m.Crowds.Healthy(p) == nil })
}

// roundPlans are the plans of a case's rounds, of one stage or both.
func roundPlans(c *cases.Case, g Grounds) []diagnosis.Plan {
	var out []diagnosis.Plan
	if g.Known && len(g.Plan.Rounds) > 0 {
		out = append(out, g.Plan)
	}
	if p, ok := otherPlan(c, g.Plan.Stage); ok {
		out = append(out, p)
	}
	return out
}

// Rank judges a stage by its rounds' crowd, which may be nil, and by those of its logs that are
// there.
func (m *Mind) Rank(c *cases.Case, found evidence.Findings, g Grounds, crowd *ensemble.Ensemble, prior diagnosis.Prior) diagnosis.Ranking {
	r := m.judge.Rank(c, found, g.Plan, crowd, prior)
	for _, l := range g.Logs {
		if e := m.Crowds.Kept(l.Plan); e != nil {
			r = r.WithLog(l, e)
		}
	}
	return r
}

// Thought is a case's findings with its causes and what to do next.
type Thought struct {
	Found   evidence.Findings
	Ranking diagnosis.Ranking
	Next    []diagnosis.Check
	Beside  *diagnosis.Beside // nil: nothing is left open
}

// Think judges the case by the crowds that are there, each cause with its
// reasons.
func (m *Mind) Think(c *cases.Case, prior diagnosis.Prior) Thought {
	g := m.Asked(c)
	t := m.Weigh(c, g, m.Crowd(g), prior)
	t.Ranking.Explain(len(t.Ranking.Causes))
	return t
}

// Crowd is the whole crowd of a stage's rounds, or nil.
func (m *Mind) Crowd(g Grounds) *ensemble.Ensemble {
	if !g.Known {
		return nil
	}
	return m.Crowds.Kept(g.Plan)
}

// Weigh judges the case by a crowd, which may be part of the whole or nil, and
// leaves the reasons out: they take longer than all the rest.
func (m *Mind) Weigh(c *cases.Case, g Grounds, crowd *ensemble.Ensemble, prior diagnosis.Prior) Thought {
	t := Thought{Found: m.Analyst.Analyse(c)}
	t.Ranking = m.Rank(c, t.Found, g, crowd, prior)
	t.Next, t.Beside = m.judge.Next(t.Ranking), m.judge.Beside(t.Ranking)
	return t
}

// weighWhole weighs the case by all its cars, which are simulated first where they aren't there. One that can't be simulated is
// judged without temperatures: the only error is ctx's.
func (m *Mind) weighWhole(ctx context.Context, c cases.Case) (Thought, error) {
	g := m.Asked(&c)
	if err := m.Gather(ctx, &c, g, nil); err != nil && ctx.Err() != nil {
		return Thought{}, ctx.Err()
	}
	return m.Weigh(&c, g, m.Crowd(g), diagnosis.Prior{}), nil
}
