package cases_test

import (
	"slices"
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

// Rounds are found again after others were added before, between or behind them, or deleted.
func TestRoundsAreFoundAgain(t *testing.T) {
	with := func(labels string) (c cases.Case) {
		for _, l := range labels {
			c.Rounds = append(c.Rounds, cases.Round{Label: string(l), Stage: cases.BeforeRepair})
		}
		return c
	}
	for _, tt := range []struct {
		before, after string
		want          []int
	}{
		{"abc", "bc", []int{-1, 0, 1}},
		{"abc", "ac", []int{0, -1, 1}},
		{"abc", "ab", []int{0, 1, -1}},
		{"bc", "abc", []int{1, 2}},
		{"abc", "abxc", []int{0, 1, 3}},
		{"aa", "a", []int{0, -1}},
		{"abc", "", []int{-1, -1, -1}},
		{"", "a", nil},
	} {
		if got := cases.Where(with(tt.before), with(tt.after)); !slices.Equal(got, tt.want) {
			t.Errorf("%q to %q: %v, want %v", tt.before, tt.after, got, tt.want)
		}
	}
}
