package invented_test

import (
	"bytes"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/invented"
	"loopbook/cases/trial"
)

var start = time.Date(2012, 3, 1, 8, 0, 0, 0, time.UTC)

func dressed(t *testing.T, n int) []cases.Case {
	t.Helper()
	shop := invented.NewShop(1, start, 10, n)
	list := trial.Cases(1, n, trial.Checks)
	for i := range list {
		shop.Dress(&list[i])
	}
	return list
}

func TestDressedCasesAreValidAndTheSameEachTime(t *testing.T) {
	const n = 600
	a, b := dressed(t, n), dressed(t, n)
	ids, open, again := map[string]bool{}, 0, map[string]int{}
	for i, c := range a {
		text, err := cases.Encode(c)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := cases.Decode(text); err != nil {
			t.Fatalf("case %d: %v", i, err)
		}
		if other, _ := cases.Encode(b[i]); !bytes.Equal(text, other) {
			t.Fatalf("case %d differs from one time to the next", i)
		}
		if c.Opened.Before(start) || c.Opened.After(start.AddDate(10, 0, 1)) {
			t.Errorf("case %d was opened on %v", i, c.Opened)
		}
		for _, r := range c.Rounds {
			if d := r.Taken.Sub(c.Opened); !r.Taken.IsZero() && (d < -time.Hour || d > 24*time.Hour) {
				t.Errorf("case %d has a round %v after it began", i, d)
			}
		}
		ids[c.ID] = true
		again[c.Customer.Name+c.Vehicle.Make+c.Vehicle.Model]++
		if c.Verdict.Cause == "" {
			open++
		}
	}
	if len(ids) != n || open == 0 || open > n/4 || len(again) == n {
		t.Errorf("%d ids, %d open, %d vehicles of %d", len(ids), open, len(again), n)
	}
}

// A lesson that fits every case teaches nothing, and one of another fault the wrong thing: each is of its cause alone, but for
// the sensor's two.
func TestALessonFitsItsCause(t *testing.T) {
	taught := map[string]cases.Cause{}
	for _, c := range dressed(t, 600) {
		cause := c.Verdict.Cause
		if cause == "sensor-reads-high" {
			cause = "sensor-reads-low"
		}
		if (c.Lesson == "") != (cause == "") {
			t.Fatalf("the verdict %q teaches %q", cause, c.Lesson)
		}
		if other, had := taught[c.Lesson]; had && other != cause {
			t.Errorf("%q is taught by %s and by %s", c.Lesson, other, cause)
		}
		taught[c.Lesson] = cause
	}
	if len(taught) < len(cases.Words[cases.Cause]()) {
		t.Errorf("%d lessons of %d causes", len(taught), len(cases.Words[cases.Cause]()))
	}
}
