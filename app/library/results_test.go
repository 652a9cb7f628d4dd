package library

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// A trainee's results come back to the trainer's notebook once, under the cases that were handed over.
func TestResultsComeBackUnderTheirCases(t *testing.T) {
	ctx, dir := context.Background(), t.TempDir()
	mine, ids := notebookOf(t, cases.Bundle{Case: casetest.Invented(1)}, cases.Bundle{Case: casetest.Invented(2)})
	class := cases.Class{Name: "Tuesday", Cases: ids, Sealed: true}
	if err := mine.SaveClass(ctx, class); err != nil {
		t.Fatal(err)
	}
	set, table := filepath.Join(dir, "set.zip"), filepath.Join(dir, "results.csv")
	if err := WriteClass(ctx, mine, class, set); err != nil {
		t.Fatal(err)
	}
	theirs, _ := notebookOf(t)
	took, err := Take(ctx, theirs, []string{set}, strings.NewReader(""), func(int, int) {})
	if err != nil || took.Sealed != 2 || took.Classes[0].Cases[0] == ids[0] {
		t.Fatal(took, err)
	}
	edited, err := mine.Get(ctx, ids[1])
	if err != nil {
		t.Fatal(err)
	}
	edited.Lesson = "Told better afterwards."
	if _, err := mine.Put(ctx, edited, "lesson"); err != nil {
		t.Fatal(err)
	}
	var results []cases.Result
	for _, id := range took.Classes[0].Cases {
		b, err := SealedCase(ctx, theirs, id)
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, cases.Result{Trainee: "Liv", Class: "Tuesday", CaseID: id, Title: b.Case.Title, Truth: b.Case.Verdict.Cause, Finished: time.Date(2026, 3, 4, 18, 30, 9, 0, time.UTC)})
	}
	if err := WriteFile(table, func(f *os.File) error { return exchange.WriteResults(f, results) }); err != nil {
		t.Fatal(err)
	}
	for n, want := range [][2]int{{2, 0}, {0, 2}} {
		taken, known, err := TakeResults(ctx, mine, table)
		if err != nil || taken != want[0] || known != want[1] {
			t.Errorf("time %d: %d taken, %d known, %v; want %v", n+1, taken, known, err, want)
		}
	}
	got, err := mine.Results(ctx, "Tuesday")
	if err != nil || len(got) != 2 || got[0].CaseID != ids[0] || got[1].CaseID != ids[1] {
		t.Errorf("kept are %+v, %v", got, err)
	}
	if err := os.WriteFile(table, []byte("time_s,ect_c\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := TakeResults(ctx, mine, table); err == nil || !strings.Contains(err.Error(), "results.csv") {
		t.Errorf("another table is %v", err)
	}
}

// A result is taken in once, though the case was edited between two tables that hold it, and stands under its own case where
// another has the same title; those of a set that got a number behind its name stand under the set that was handed over.
func TestResultsAreCountedOnce(t *testing.T) {
	ctx, table := context.Background(), filepath.Join(t.TempDir(), "results.csv")
	first, second := casetest.Invented(1), casetest.Invented(2)
	second.Title, second.Verdict.Cause = first.Title, first.Verdict.Cause
	mine, ids := notebookOf(t, cases.Bundle{Case: first}, cases.Bundle{Case: second})
	if err := mine.SaveClass(ctx, cases.Class{Name: "Tuesday", Cases: ids}); err != nil {
		t.Fatal(err)
	}
	var results []cases.Result
	for n, id := range ids {
		b, _, err := Giving{Anonymous: true}.Bundle(ctx, mine, id)
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, cases.Result{Trainee: "Liv", Class: "Tuesday (2)", CaseID: b.Case.ID, Title: b.Case.Title, Truth: b.Case.Verdict.Cause, Finished: time.Date(2026, 3, 4, 18, 30+n, 9, 0, time.UTC)})
	}
	take := func(wantTaken, wantKnown int) {
		t.Helper()
		if err := WriteFile(table, func(f *os.File) error { return exchange.WriteResults(f, results) }); err != nil {
			t.Fatal(err)
		}
		if taken, known, err := TakeResults(ctx, mine, table); err != nil || taken != wantTaken || known != wantKnown {
			t.Errorf("%d taken, %d known, %v; want %d and %d", taken, known, err, wantTaken, wantKnown)
		}
	}
	take(2, 0)
	if got, err := mine.Results(ctx, "Tuesday"); err != nil || len(got) != 2 || got[0].CaseID != ids[0] || got[1].CaseID != ids[1] {
		t.Errorf("kept are %+v, %v", got, err)
	}
	first.Title = "Named better"
	if _, err := mine.Put(ctx, first, "title"); err != nil {
		t.Fatal(err)
	}
	again := results[0]
	again.Finished = again.Finished.AddDate(0, 0, 1)
	results = append(results, again)
	take(1, 2)
}
