package mind

import (
	"context"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/practice"
)

// Coach judges what somebody bought in practice as the program would, and goes its own
// way through the same evidence.
type Coach struct {
	Mind  *Mind
	Costs practice.Costs
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

// NewCoach is a coach for whom a check costs the minutes that the tables say.
func NewCoach(t *likelihood.Tables) (*Coach, error) {
	m, err := New()
	if err != nil {
		return nil, err
	}
	m.Crowds.Draws = coachDraws
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
	return &Coach{m, costs}, nil
}

// Belief is what the program holds after a piece of evidence.
type Belief struct {
	Bought practice.Item // the zero item: nothing was bought yet
	Proof  bool          // it would prove what was as good as settled
	cases.Guess
	Then practice.Item // what the program would have taken from there; the zero item: nothing more
}

// Settled reports whether the truth was likely enough to stop.
func (b Belief) Settled() bool { return b.TruthP >= settledAt }

// Played is what the program makes of somebody's way through a case.
type Played struct {
	Steps   []Belief           // the first before anything was bought
	For     []diagnosis.Reason // what of all that was bought speaks for the truth
	Against []diagnosis.Reason // and what against a wrong cause that was named
}

// Enough is how many things were bought when the truth became likely enough and stayed so; false: it never did.
func (p Played) Enough() (n int, ever bool) {
	for n = len(p.Steps); n > 0 && p.Steps[n-1].Settled(); n-- {
		ever = true
	}
	return n, ever
}

// fairFrom is how likely all of a case's evidence must make the truth that somebody can be asked for it (judgement): more
// than twice as likely as a blind guess. Of every third car whose evidence misleads it makes less, and some tell nothing at all.
const fairFrom = 0.1

// Fair reports whether all the evidence that a case holds leads anywhere near the truth.
func (k *Coach) Fair(ctx context.Context, c cases.Case) (bool, error) {
	s, err := practice.Begin(c, k.Costs)
	if err != nil {
		return false, err
	}
	t, err := k.Mind.weighWhole(ctx, s.With(s.Items()))
	return err == nil && GuessOf(t.Ranking, s.Truth()).TruthP >= fairFrom, err
}

// Replay is what the program would have believed after each thing that was bought, and what it would have taken then;
// named is the answer, empty where none was given.
func (k *Coach) Replay(ctx context.Context, s *practice.Session, named cases.Cause) (p Played, err error) {
	bought := s.Bought()
	var t Thought
	for n := 0; n <= len(bought); n++ {
		then := s.Upto(n)
		b := Belief{}
		if n > 0 {
			b.Bought, b.Proof = bought[n-1], proves(t, bought[n-1])
		}
		if t, err = k.Mind.weighWhole(ctx, then.Seen()); err != nil {
			return Played{}, err
		}
		if b.Guess = GuessOf(t.Ranking, s.Truth()); !b.Settled() && len(then.Left()) > 0 {
			b.Then = next(t, then)
		}
		p.Steps = append(p.Steps, b)
	}
	t.Ranking.Explain(len(t.Ranking.Causes))
	truth, _ := t.Ranking.Of(s.Truth())
	p.For = truth.For
	if wrong, ok := t.Ranking.Of(named); ok && named != s.Truth() {
		p.Against = wrong.Against
	}
	return p, nil
}

// proves reports whether an item was what the program asked for as the proof of what was as good as settled.
func proves(t Thought, i practice.Item) bool {
	return slices.ContainsFunc(t.Next, func(wish diagnosis.Check) bool { return wish.Proof && meets(wish, i) })
}

// Way is the program's own path through a case: each time what is worth most for its
// minutes, until the truth is likely enough or nothing is left.
type Way struct {
	Steps   []Belief
	Minutes float64
	Settled bool
}

// OwnWay goes the program's way through the evidence that the case holds.
func (k *Coach) OwnWay(ctx context.Context, whole cases.Case) (Way, error) {
	s, err := practice.Begin(whole, k.Costs)
	if err != nil {
		return Way{}, err
	}
	var w Way
	for {
		t, err := k.Mind.weighWhole(ctx, s.Seen())
		if err != nil {
			return Way{}, err
		}
		b := Belief{Guess: GuessOf(t.Ranking, s.Truth())}
		if bought := s.Bought(); len(bought) > 0 {
			b.Bought = bought[len(bought)-1]
		}
		w.Steps, w.Minutes = append(w.Steps, b), s.Minutes()
		if w.Settled = b.Settled(); w.Settled || len(s.Left()) == 0 {
			return w, nil
		}
		if err := s.Buy(withDash(s, next(t, s))); err != nil {
			return Way{}, err
		}
	}
}

// next is the first of the program's wishes that the case can meet, or else the cheapest
// of what is left.
func next(t Thought, s *practice.Session) practice.Item {
	left := s.Left()
	for _, wish := range t.Next {
		for _, i := range left { // a point is wished for in the first round that has it, since that comes first
			if meets(wish, i) {
				return i
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

// withDash is the look at the scan tool and the gauge before the first hose of a round: it stands in every round that is
// begun, so no check asks for it, and no one reads hoses without.
func withDash(s *practice.Session, i practice.Item) practice.Item {
	for _, dash := range s.Left() {
		if i.Kind == practice.Point && dash.Kind == practice.Dash && dash.At == i.At {
			return dash
		}
	}
	return i
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
