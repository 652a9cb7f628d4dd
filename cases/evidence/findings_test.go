package evidence_test

import (
	"testing"

	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A round has something out of its range by a reading of its own or by a difference of its own.
func TestOutOfRangeIsOfARound(t *testing.T) {
	read := func(s evidence.State) evidence.Round {
		return evidence.Round{Readings: map[diagram.Point]evidence.Reading{diagram.RadIn: {State: s}}}
	}
	f := evidence.Findings{
		Rounds: []evidence.Round{read(evidence.InRange), read(evidence.High), read(evidence.InRange)},
		Deltas: []evidence.Delta{{Round: 2, State: evidence.Low}, {Round: 0, State: evidence.Unknown}},
	}
	for round, want := range map[int]bool{-1: false, 0: false, 1: true, 2: true, 3: false} {
		if f.OutOfRange(round) != want {
			t.Errorf("round %d is out: %v, want %v", round, !want, want)
		}
	}
}
