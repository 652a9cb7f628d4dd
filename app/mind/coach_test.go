package mind

import (
	"context"
	"testing"

	"loopbook/app/library"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/practice"
)

// The program's way through a plain case ends at the truth, costs no more than all that
// can be bought, and a trainee who buys everything is shown as many beliefs.
func TestCoach(t *testing.T) {
	if testing.Short() {
		t.Skip("simulates a loop")
	}
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	k, err := NewCoach(tables)
	if err != nil {
		t.Fatal(err)
	}
	k.Mind.Crowds.Draws = 20
	demo, err := library.DemoCases()
	if err != nil {
		t.Fatal(err)
	}
	c := demo[1].Case // a thermostat stuck open on a cold morning
	ctx := context.Background()
	w, err := k.OwnWay(ctx, c)
	if err != nil {
		t.Fatal(err)
	}
	last := w.Steps[len(w.Steps)-1]
	if !w.Settled || last.First != c.Verdict.Cause || last.TruthP < settledAt {
		t.Errorf("the way ends at %+v after %d steps", last, len(w.Steps))
	}
	s, err := practice.Begin(c, k.Costs)
	if err != nil {
		t.Fatal(err)
	}
	all := 0.0
	for _, i := range s.Items() {
		all += i.Minutes
	}
	if w.Minutes <= 0 || w.Minutes >= all {
		t.Errorf("the way takes %g min of %g", w.Minutes, all)
	}
	for _, i := range s.Items()[:3] {
		if err := s.Buy(i); err != nil {
			t.Fatal(err)
		}
	}
	wrong := cases.Cause("thermostat-stuck-closed")
	p, err := k.Replay(ctx, s, wrong)
	if err != nil || len(p.Steps) != 4 || p.Steps[0].Bought.Kind != "" || p.Steps[3].Bought != s.Items()[2] {
		t.Errorf("replay = %+v, %v", p.Steps, err)
	}
	first, hose := w.Steps[1].Bought, w.Steps[2].Bought
	if p.Steps[0].Settled() || first.Kind != practice.Dash || hose.Kind != practice.Point || hose.At != first.At || p.Steps[0].Then.At != first.At {
		t.Errorf("at first a trainee is told of %+v, and the program takes %+v, %+v: want the scan tool before the hoses of a round", p.Steps[0].Then, first, hose)
	}
	if len(p.For) == 0 || len(p.Against) == 0 || p.For[0].Factor <= 1 || p.Against[0].Factor >= 1 {
		t.Errorf("for the truth speaks %+v, against %s %+v", p.For, wrong, p.Against)
	}
	if p, err := k.Replay(ctx, s, c.Verdict.Cause); err != nil || len(p.Against) != 0 {
		t.Errorf("against the truth, named rightly, speaks %+v, %v", p.Against, err)
	}
	if fair, err := k.Fair(ctx, c); err != nil || !fair {
		t.Errorf("a plain case is fair: %t, %v", fair, err)
	}
	misleading := c
	misleading.Verdict.Cause = "cap-vacuum-stuck" // of which nothing that was measured tells
	if fair, err := k.Fair(ctx, misleading); err != nil || fair {
		t.Errorf("a case that nothing leads to the truth of is fair: %t, %v", fair, err)
	}
	ctx, cancel := context.WithCancel(ctx)
	cancel()
	k, _ = NewCoach(tables)
	if _, err := k.OwnWay(ctx, c); err == nil {
		t.Error("a way that was stopped has no error")
	}
}

// What was bought after the truth was likely enough, and stayed so, is told from what led there.
func TestEnoughIsFromWhereItStaysSettled(t *testing.T) {
	at := func(chances ...float64) (p Played) {
		for _, c := range chances {
			p.Steps = append(p.Steps, Belief{Guess: cases.Guess{TruthP: c}})
		}
		return p
	}
	for _, tt := range []struct {
		p    Played
		n    int
		ever bool
	}{{at(0.1, 0.9, 0.3), 3, false}, {at(0.1, 0.9, 0.3, 0.85, 0.9), 3, true}, {at(0.9), 0, true}, {at(0.1, 0.8), 1, true}} {
		if n, ever := tt.p.Enough(); n != tt.n || ever != tt.ever {
			t.Errorf("%+v is enough after %d, %t; want %d, %t", tt.p.Steps, n, ever, tt.n, tt.ever)
		}
	}
}
