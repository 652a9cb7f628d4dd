package main

import (
	"context"

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

// gather simulates what the case is judged by: every cause for the stage that
// causes are asked of, healthy cars for the other one.
func (m *mind) gather(ctx context.Context, c *cases.Case, soFar func(*ensemble.Ensemble)) error {
	asked := diagnosis.StageOf(c)
	if _, err := m.gatherStage(ctx, c, asked, soFar); err != nil {
		return err
	}
	for i := range c.Rounds {
		stage := diagnosis.StageOfRound(c, i)
		if stage == asked {
			continue
		}
		if p, ok := diagnosis.PlanFor(c, stage); ok {
			_, err := m.crowds.Get(ctx, p.Healthy(), nil)
			return err
		}
	}
	return nil
}

// gatherStage simulates every cause for a stage: its rounds, whose crowd it answers, then its
// logs. There is none where the layout isn't known.
func (m *mind) gatherStage(ctx context.Context, c *cases.Case, stage cases.Stage, soFar func(*ensemble.Ensemble)) (rounds *ensemble.Ensemble, err error) {
	for i, p := range plansOf(c, m.analyst.Analyse(c), stage) {
		e, err := m.crowds.Get(ctx, p, soFar)
		if err != nil {
			return nil, err
		}
		if i == 0 {
			rounds, soFar = e, nil
		}
	}
	return rounds, nil
}

// plansOf are what a stage's causes are judged by: the rounds' crowd first, then one for each
// log that is weighed.
func plansOf(c *cases.Case, found evidence.Findings, stage cases.Stage) []diagnosis.Plan {
	p, ok := diagnosis.PlanFor(c, stage)
	if !ok {
		return nil
	}
	out := []diagnosis.Plan{p}
	for _, l := range diagnosis.LogPlans(c, found, stage) {
		out = append(out, l.Plan)
	}
	return out
}

// rank judges a stage by its rounds' crowd, which may be nil, and by those of its logs that are
// there.
func (m *mind) rank(c *cases.Case, found evidence.Findings, p diagnosis.Plan, crowd *ensemble.Ensemble, prior diagnosis.Prior) diagnosis.Ranking {
	r := m.judge.Rank(c, found, p, crowd, prior)
	for _, l := range diagnosis.LogPlans(c, found, p.Stage) {
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
}

// think judges the case by the crowds that are there, each cause with its
// reasons.
func (m *mind) think(c *cases.Case, prior diagnosis.Prior) thought {
	t := m.weigh(c, m.crowd(c), prior)
	t.ranking.Explain(len(t.ranking.Causes))
	return t
}

// crowd is the whole crowd that the case's causes are judged by, or nil.
func (m *mind) crowd(c *cases.Case) *ensemble.Ensemble {
	if p, ok := diagnosis.PlanFor(c, diagnosis.StageOf(c)); ok {
		return m.crowds.Kept(p)
	}
	return nil
}

// weigh judges the case by a crowd, which may be part of the whole or nil, and
// leaves the reasons out: they take longer than all the rest.
func (m *mind) weigh(c *cases.Case, crowd *ensemble.Ensemble, prior diagnosis.Prior) thought {
	t := thought{found: m.analyst.Analyse(c)}
	p, ok := diagnosis.PlanFor(c, diagnosis.StageOf(c))
	if !ok {
		crowd = nil
	}
	t.ranking = m.rank(c, t.found, p, crowd, prior)
	t.next = m.judge.Next(t.ranking)
	return t
}
