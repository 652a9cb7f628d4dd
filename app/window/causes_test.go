package window

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"loopbook/app/desk"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
)

// queue holds what was to run apart from the window, to be run when the test says so.
type queue []func()

func (q *queue) start(f func()) { *q = append(*q, f) }

// next lets the oldest of it run.
func (q *queue) next() {
	first := (*q)[0]
	*q = (*q)[1:]
	first()
}

// waiting is a desk with an open case, and what is to run apart from it.
func waiting(t *testing.T, c cases.Case) (*desk.Desk, *queue) {
	t.Helper()
	store, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "n.db"), time.Now)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	id, err := store.Put(context.Background(), c, "test")
	if err != nil {
		t.Fatal(err)
	}
	var q queue
	d, err := desk.New(context.Background(), store, desk.Apart{Start: q.start, Do: func(f func()) { f() }})
	if err != nil {
		t.Fatal(err)
	}
	d.Mind.Crowds.Draws = 2
	d.Told = func(err error) { t.Error(err) }
	d.Load(id)
	return d, &q
}

func (q *queue) runAll() {
	for len(*q) > 0 {
		q.next()
	}
}

// idling is a case with one round at warm idle.
func idling(housing diagram.Celsius) cases.Case {
	minutes := 25.0
	return cases.Case{Opened: time.Now(), Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{
		Label: "warm idle", MinutesSinceStart: &minutes, Readings: []cases.Reading{{Point: diagram.Housing, ShownC: &housing}},
	}}}
}

func TestJudgedRoundIsOneOfThePlan(t *testing.T) {
	p := diagnosis.Plan{Rounds: []int{0, 2}}
	for shown, want := range map[int]int{0: 0, 1: 2, 2: 2, 5: 2} {
		if got := judgedRound(p, shown); got != want {
			t.Errorf("judgedRound(%d) = %d, want %d", shown, got, want)
		}
	}
	if got := judgedRound(diagnosis.Plan{}, 0); got != -1 {
		t.Errorf("without rounds judgedRound = %d, want -1", got)
	}
}

// A step back may take a round that the causes were weighed with; until they are
// weighed anew, what is shown is of the case that they were weighed from.
func TestACauseIsComparedWithTheCaseItWasWeighedFrom(t *testing.T) {
	c := idling(90)
	c.Rounds = append(c.Rounds, c.Rounds[0])
	d, q := waiting(t, c)
	q.runAll()
	d.Edit("less", func(c *cases.Case) { c.Rounds = c.Rounds[:1] }) // and not weighed yet
	if got := len(causesOf(d).Rounds); got != 2 {
		t.Errorf("%d rounds to compare with, want the 2 that were weighed", got)
	}
}

// Until the expected ranges are there no mark says that a hose is out of its own.
func TestNoMarksBeforeTheRangesAreThere(t *testing.T) {
	d, q := waiting(t, idling(20))
	drawn := func() string {
		p, _ := drawingOf(d)
		return fmt.Sprint(p.Shapes)
	}
	before := drawn()
	q.runAll()
	after := drawn()
	if strings.Contains(before, "K under") || !strings.Contains(after, "K under") {
		t.Errorf("marked before: %t, after: %t; want only after", strings.Contains(before, "K under"), strings.Contains(after, "K under"))
	}
}

// What proves a cause that is as good as settled says so, and no longer how much it settles: next to
// nothing is open then.
func TestTheProvingCheckSaysThatItProves(t *testing.T) {
	speed, minutes := 0.0, 30.0
	c := idling(108)
	c.Loop.Layout = "inlet-thermostat"
	c.Complaint.Symptoms = []cases.Symptom{"coolant-loss", "white-exhaust", "bubbles-in-bottle", "hoses-hard-cold"}
	c.Rounds[0].SpeedKmh, c.Rounds[0].MinutesSinceStart = &speed, &minutes
	seen := true
	c.Tests = []cases.Test{{Kind: "bubbles", Stage: cases.BeforeRepair, Seen: &seen}}
	d, q := waiting(t, c)
	q.runAll()
	data := causesOf(d)
	next := d.Answer().Thought.Next
	if len(next) < 2 || !next[0].Proof {
		t.Fatalf("%s at %.2f, with %+v first", data.Causes[0].Cause, data.Causes[0].Probability, next)
	}
	if got := data.Checks[0]; got.Check != next[0].Check.Check || got.Worth != "proves the likeliest cause" {
		t.Errorf("the card of %s says %q", got.Check, got.Worth)
	}
	for _, other := range data.Checks[1:] {
		if !strings.Contains(other.Worth, "of what is open") {
			t.Errorf("the card of %s says %q", other.Check, other.Worth)
		}
	}
	if !strings.HasPrefix(data.Order, "the proof first") {
		t.Errorf("the checks are said to stand by %q", data.Order)
	}
	d, q = waiting(t, idling(90))
	q.runAll()
	if data := causesOf(d); data.Order != "most learned per minute first" || strings.Contains(data.Checks[0].Worth, "proves") {
		t.Errorf("with nothing settled %q, the first check %q", data.Order, data.Checks[0].Worth)
	}
}
