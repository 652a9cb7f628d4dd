//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"maps"
	"testing"

	"loopbook/cases"
)

func TestOnlyConfirmedCasesOfOthersCount(t *testing.T) {
	s := open(t)
	verdict := func(id string, cause cases.Cause, by string) {
		put(t, s, cases.Case{ID: id, Verdict: cases.Verdict{Cause: cause, ConfirmedBy: by}}, "new")
	}
	verdict("A", "pump-weak", "hose-look")
	verdict("B", "pump-weak", "pump-drive")
	verdict("C", "pump-weak", "") // suspected only
	verdict("D", "none", "warm idle")
	verdict("E", "", "nobody")
	verdict("F", "cap-weak", "cap")
	verdict("G", "cap-weak", "cap")
	if err := s.Delete(context.Background(), "G"); err != nil {
		t.Fatal(err)
	}
	verdict("H", "fan-not-running", "fan") // what an older revision says is gone
	verdict("H", "cap-weak", "")
	put(t, s, cases.Case{ID: "I", Tags: []string{"simulated", cases.TaughtTag}, Verdict: cases.Verdict{Cause: "pump-weak", ConfirmedBy: "pump-drive"}}, "new")
	want := map[cases.Cause]int{"pump-weak": 1, "none": 1, "cap-weak": 1}
	if got, err := s.Confirmed(context.Background(), "B"); err != nil || !maps.Equal(got, want) {
		t.Errorf("Confirmed without B = %v, %v; want %v", got, err, want)
	}
}
