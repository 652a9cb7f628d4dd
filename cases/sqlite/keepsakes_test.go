//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"fmt"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestSavedSearches(t *testing.T) {
	ctx, s := context.Background(), open(t)
	for _, one := range [][2]string{{"winter", "tag:winter"}, {"Pumps", "cause:pump-weak"}, {"winter", "tag:winter stage:open"}, {"gone", "x"}, {"gone", ""}} {
		if err := s.SaveSearch(ctx, one[0], one[1]); err != nil {
			t.Fatal(err)
		}
	}
	got, err := s.SavedSearches(ctx)
	if want := "[{Pumps cause:pump-weak} {winter tag:winter stage:open}]"; fmt.Sprint(got) != want || err != nil {
		t.Errorf("SavedSearches = %v, %v; want %s", got, err, want)
	}
	if err := s.SaveSearch(ctx, " ", "x"); err == nil {
		t.Error("a search without a name was kept")
	}
}

func TestPracticeIsKept(t *testing.T) {
	ctx, s := context.Background(), open(t)
	if err := s.Retire(ctx, "A", true); err != nil {
		t.Fatal(err)
	}
	if err := s.Retire(ctx, "B", true); err != nil {
		t.Fatal(err)
	}
	if err := s.Retire(ctx, "B", false); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Retired(ctx); err != nil || len(got) != 1 || !got["A"] {
		t.Errorf("Retired = %v, %v", got, err)
	}
	if err := s.SaveClass(ctx, cases.Class{Name: "Tuesday", Cases: []string{"B", "A"}}); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Classes(ctx); err != nil || len(got) != 1 || got[0].Name != "Tuesday" || fmt.Sprint(got[0].Cases) != "[B A]" {
		t.Errorf("Classes = %v, %v", got, err)
	}
	want := cases.Result{Trainee: "Liv", Class: "Tuesday", CaseID: "A", Named: "cap-weak", Truth: "pump-weak", Confidence: 0.7, Bits: -1.5,
		Minutes: 12, BestMinutes: 8, Finished: casetest.Start, Bought: []string{"cap", "rad_in 0"}}
	alone := want
	alone.Class, alone.Finished = "", casetest.Start.Add(-time.Hour)
	for _, r := range []cases.Result{want, alone} {
		if err := s.AddResult(ctx, r); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := s.Results(ctx, "Tuesday"); err != nil || len(got) != 1 || fmt.Sprint(got[0]) != fmt.Sprint(want) {
		t.Errorf("Results = %+v, %v; want %+v", got, err, want)
	}
	if got, err := s.Results(ctx, ""); err != nil || len(got) != 2 || got[0].Class != "" {
		t.Errorf("all results = %+v, %v; want two, the earlier first", got, err)
	}
	if err := s.SaveClass(ctx, cases.Class{Name: "Tuesday"}); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Classes(ctx); err != nil || len(got) != 0 {
		t.Errorf("an emptied class = %v, %v", got, err)
	}
}
