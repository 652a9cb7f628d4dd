package main

import (
	"context"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/practice"
)

// coach judges what somebody bought in practice as the program would, and goes its own
// way through the same evidence.
type coach struct {
	mind  *mind
	costs practice.Costs
}

// coachDraws is how many cars of each cause are simulated for practice: a session is
// judged at many points.
const coachDraws = 60

// dashMinutes is what a look at the scan tool and the gauge costs (judgement: less than
// one hose).
const dashMinutes = 0.5

// settledAt is how likely the truth must be that the program's way ends (judgement). It
// stops at nothing else, however sure of it: a way that ends at a wrong cause would be
// short and worthless.
const settledAt = 0.8

func newCoach(t *likelihood.Tables) (*coach, error) {
	m, err := newMind()
	if err != nil {
		return nil, err
	}
	m.crowds.Draws = coachDraws
	costs := practice.Costs{Dash: dashMinutes, Tests: map[cases.TestKind]float64{}}
	for _, c := range t.Checks() {
		switch c.Check {
		case likelihood.HosePoint:
			costs.Point = c.Minutes
		case likelihood.WarmUp:
			costs.Log = c.Minutes
		default:
			costs.Tests[cases.TestKind(c.Check)] = c.Minutes
		}
	}
	return &coach{m, costs}, nil
}

// belief is what the program holds after a piece of evidence.
type belief struct {
	Bought practice.Item // the zero item: nothing was bought yet
	First  cases.Cause
	FirstP float64
	TruthP float64
}

// judge weighs what is seen.
func (k *coach) judge(ctx context.Context, c cases.Case) (thought, error) {
	g := k.mind.asked(&c)
	if err := k.mind.gather(ctx, &c, g, nil); err != nil && ctx.Err() != nil {
		return thought{}, ctx.Err() // one that can't be simulated is judged without temperatures
	}
	return k.mind.weigh(&c, g, k.mind.crowd(g), diagnosis.Prior{}), nil
}

// replay is what the program would have believed after each thing that was bought, the
// first before any.
func (k *coach) replay(ctx context.Context, s *practice.Session) ([]belief, error) {
	bought := s.Bought()
	var out []belief
	for n := 0; n <= len(bought); n++ {
		t, err := k.judge(ctx, s.After(n))
		if err != nil {
			return nil, err
		}
		g := guessOf(t.ranking, s.Truth())
		b := belief{First: g.First, FirstP: g.FirstP, TruthP: g.TruthP}
		if n > 0 {
			b.Bought = bought[n-1]
		}
		out = append(out, b)
	}
	return out, nil
}

// way is the program's own path through a case: each time what is worth most for its
// minutes, until the truth is likely enough or nothing is left.
type way struct {
	Steps   []belief
	Minutes float64
	Settled bool
}

// ownWay goes the program's way through the evidence that the case holds.
func (k *coach) ownWay(ctx context.Context, whole cases.Case) (way, error) {
	s, err := practice.Begin(whole, k.costs)
	if err != nil {
		return way{}, err
	}
	var w way
	for {
		t, err := k.judge(ctx, s.Seen())
		if err != nil {
			return way{}, err
		}
		g := guessOf(t.ranking, s.Truth())
		b := belief{First: g.First, FirstP: g.FirstP, TruthP: g.TruthP}
		if bought := s.Bought(); len(bought) > 0 {
			b.Bought = bought[len(bought)-1]
		}
		w.Steps, w.Minutes = append(w.Steps, b), s.Minutes()
		if w.Settled = g.TruthP >= settledAt; w.Settled || len(s.Left()) == 0 {
			return w, nil
		}
		if err := s.Buy(next(t, s)); err != nil {
			return way{}, err
		}
	}
}

// next is the first of the program's wishes that the case can meet, or else the cheapest
// of what is left.
func next(t thought, s *practice.Session) practice.Item {
	left := s.Left()
	for _, wish := range t.next {
		for n := len(left) - 1; n >= 0; n-- { // a point is wished for in the last round
			if meets(wish, left[n]) {
				return left[n]
			}
		}
	}
	cheapest := left[0]
	for _, i := range left {
		if i.Minutes < cheapest.Minutes {
			cheapest = i
		}
	}
	return cheapest
}

func meets(wish diagnosis.Check, i practice.Item) bool {
	switch wish.Check.Check {
	case likelihood.HosePoint:
		return i.Kind == practice.Point && i.Point == wish.Point
	case likelihood.WarmUp:
		return i.Kind == practice.Log
	}
	return i.Kind == practice.Test && string(i.Check) == wish.Check.Check
}
