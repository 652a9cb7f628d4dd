package mind

import (
	"context"
	"testing"

	"loopbook/app/library"
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
	beliefs, err := k.Replay(ctx, s)
	if err != nil || len(beliefs) != 4 || beliefs[0].Bought.Kind != "" || beliefs[3].Bought != s.Items()[2] {
		t.Errorf("replay = %+v, %v", beliefs, err)
	}
	ctx, cancel := context.WithCancel(ctx)
	cancel()
	k, _ = NewCoach(tables)
	if _, err := k.OwnWay(ctx, c); err == nil {
		t.Error("a way that was stopped has no error")
	}
}
