package cases_test

import (
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

// What was typed beside a round stays with it for as long as the round stands: until one before it, or it itself, is
// another. An empty list is none, and a case that can't be kept tells of no change.
func TestRoundsStandUntilOneIsAnother(t *testing.T) {
	round := func(label string) cases.Round { return cases.Round{Label: label, Stage: cases.BeforeRepair} }
	with := func(rounds ...cases.Round) cases.Case {
		return cases.Case{ID: "A", Opened: time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC), Rounds: rounds}
	}
	before := with(round("cold"), round("idle"), round("road"))
	edited := with(round("cold"), round("idle"), round("road"))
	edited.Rounds[0].Readings = []cases.Reading{} // as one is left from which the last reading was taken
	broken := with(round("cold"))
	broken.Site.AltitudeM = casetest.P(diagram.Metre(1e6))
	for name, tt := range map[string]struct {
		before, after cases.Case
		want          int
	}{
		"all":           {before, before, 3},
		"empty list":    {edited, before, 3},
		"one more":      {before, with(append(before.Rounds[:3:3], round("again"))...), 3},
		"second":        {before, with(round("cold"), round("fast"), round("road")), 1},
		"first gone":    {before, with(before.Rounds[1:]...), 0},
		"last gone":     {before, with(before.Rounds[:2]...), 2},
		"can't be kept": {broken, before, 3},
	} {
		if got := cases.Standing(tt.before, tt.after); got != tt.want {
			t.Errorf("%s: %d rounds stand, want %d", name, got, tt.want)
		}
	}
}
