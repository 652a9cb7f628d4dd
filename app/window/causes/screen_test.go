package causes

import (
	"testing"

	"loopbook/app/desk"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/diagram"
)

// begun is the screen of a new case's causes.
func begun(t *testing.T) (*Screen, *benchtest.Made) {
	t.Helper()
	m := benchtest.New(t)
	s := New(m.Desk, m.App.Preferences(), Ways{})
	m.Desk.Begin()
	return s, m
}

func TestTheHoseMapTellsWhatIsLikely(t *testing.T) {
	s, m := begun(t)
	if got := likelyOf(s.desk); got != nil {
		t.Errorf("before anything is measured it tells %+v", got)
	}
	m.Desk.Typed(diagram.Housing, "60")
	if got := likelyOf(s.desk); len(got) != 3 || got[0].Chance < got[1].Chance {
		t.Errorf("with a reading it tells %+v, want three, the likeliest first", got)
	}
}

func TestCausesAreShownWithWhatTheyWereWeighedFrom(t *testing.T) {
	s, m := begun(t)
	if got := dataOf(s.desk); !got.Blank || got.Basis != "Nothing is measured, told or tested yet." {
		t.Errorf("a new case: blank %t, %q", got.Blank, got.Basis)
	}
	m.Desk.Typed(diagram.Housing, "60")
	s.Show()
	d := dataOf(s.desk)
	if want := "Weighed from 1 round, 1 reading, 0 warm-ups, 0 symptoms, 0 codes and 0 tests before repair, by 2 simulated cars of each cause."; d.Basis != want {
		t.Errorf("basis = %q, want %q", d.Basis, want)
	}
	if d.Chosen != d.Causes[0].Cause || len(d.Checks) == 0 {
		t.Errorf("%q is chosen of %+v, with %d checks", d.Chosen, d.Causes[0], len(d.Checks))
	}
	s.view.OnCause("pump-weak")
	if got := dataOf(s.desk).Chosen; got != "pump-weak" {
		t.Errorf("after choosing pump-weak reasons are of %q", got)
	}
}

func TestOddsArePreferences(t *testing.T) {
	s, _ := begun(t)
	s.view.OnFlat(true)
	s.view.OnLearn(false)
	if !s.kept.odds(desk.Odds{}).Flat || s.kept.odds(desk.Odds{}).Learn != desk.LearnNo || !s.desk.Odds.Prior().Flat {
		t.Errorf("flat %t, learn %q, prior %+v", s.kept.odds(desk.Odds{}).Flat, s.kept.odds(desk.Odds{}).Learn, s.desk.Odds.Prior())
	}
	c := dataOf(s.desk).Causes
	if first, last := c[0].Probability, c[len(c)-1].Probability; first > 1.01*last && last > 0.01 {
		t.Errorf("all alike they run from %g to %g", last, first)
	}
}

// A ranked cause that is taken as the verdict is kept with what was held likeliest,
// and undone as any other edit.
func TestACauseTakenAsTheVerdictIsUndone(t *testing.T) {
	s, m := begun(t)
	s.view.OnTake("pump-weak")
	if got := s.desk.Case.Verdict.Cause; got != "pump-weak" || dataOf(s.desk).Verdict != got {
		t.Errorf("the verdict is %q", got)
	}
	m.Desk.Undo()
	if got := s.desk.Case.Verdict.Cause; got != "" {
		t.Errorf("after undo the verdict is %q", got)
	}
}

// What confirmed one cause is not left to stand for another, and comes back with it.
func TestAnotherVerdictIsNotConfirmedByTheFirst(t *testing.T) {
	s, m := begun(t)
	confirmed := func() string { return s.desk.Case.Verdict.ConfirmedBy }
	s.desk.Edit("", func(c *cases.Case) { c.Verdict.ConfirmedBy = "pump-drive" })
	s.view.OnTake("pump-weak")
	if got := confirmed(); got != "pump-drive" {
		t.Errorf("the first cause named is confirmed by %q", got)
	}
	s.view.OnTake("cap-weak")
	if got := confirmed(); got != "" {
		t.Errorf("another cause is confirmed by %q", got)
	}
	m.Desk.Undo()
	if got := confirmed(); got != "pump-drive" {
		t.Errorf("the first cause brought back is confirmed by %q", got)
	}
}
