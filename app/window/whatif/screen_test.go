package whatif

import (
	"testing"

	"loopbook/app/window/bench/benchtest"
)

func TestACarBeginsOnceAndEnds(t *testing.T) {
	m := benchtest.New(t)
	m.Desk.Begin()
	var q benchtest.Queue
	s := New(m.Desk, q.Start, m.Ask.Tell)
	s.Show()
	if len(q) != 1 || s.tried == "" {
		t.Fatalf("%d cars run, want one", len(q))
	}
	s.Show()
	if len(q) != 1 {
		t.Error("looked at again, another car began")
	}
	s.End()
	q.Next() // ends at once, for it was cancelled
	if s.tried != "" {
		t.Error("the car runs on")
	}
}
