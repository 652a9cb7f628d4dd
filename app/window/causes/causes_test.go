package causes

import (
	"strings"
	"testing"

	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
)

func TestJudgedRoundIsOneOfThePlan(t *testing.T) {
	p := diagnosis.Plan{Rounds: []int{0, 2}}
	for shown, want := range map[int]int{0: 0, 1: 2, 2: 2, 5: 2} {
		if got := JudgedRound(p, shown); got != want {
			t.Errorf("JudgedRound(%d) = %d, want %d", shown, got, want)
		}
	}
	if got := JudgedRound(diagnosis.Plan{}, 0); got != -1 {
		t.Errorf("without rounds JudgedRound = %d, want -1", got)
	}
}

// A step back may take a round that the causes were weighed with; until they are
// weighed anew, what is shown is of the case that they were weighed from.
func TestACauseIsComparedWithTheCaseItWasWeighedFrom(t *testing.T) {
	c := benchtest.Idling(90)
	c.Rounds = append(c.Rounds, c.Rounds[0])
	d, q := benchtest.Waiting(t, c)
	q.RunAll()
	d.Edit("less", func(c *cases.Case) { c.Rounds = c.Rounds[:1] }) // and not weighed yet
	if got := len(dataOf(d).Rounds); got != 2 {
		t.Errorf("%d rounds to compare with, want the 2 that were weighed", got)
	}
}

// Readings that contradict each other weigh nothing, and nothing is computed for them: the basis said that two were
// weighed, and for good that the loop is being computed.
func TestTheBasisCountsWhatWeighs(t *testing.T) {
	c := benchtest.Idling(30)
	hot := diagram.Celsius(80) // behind the thermostat, which nothing warms
	c.Rounds[0].Readings = append(c.Rounds[0].Readings, cases.Reading{Point: diagram.EngineOut, ShownC: &hot})
	c.Complaint.Symptoms = []cases.Symptom{"gauge-low"}
	d, q := benchtest.Waiting(t, c)
	q.RunAll()
	got := dataOf(d).Basis
	if !strings.Contains(got, "0 readings") || !strings.Contains(got, "1 symptom") || strings.Contains(got, "computed") {
		t.Errorf("by contradicting readings: %q", got)
	}
}

// What proves a cause that is as good as settled says so, and no longer how much it settles: next to
// nothing is open then.
func TestTheProvingCheckSaysThatItProves(t *testing.T) {
	speed, minutes := 0.0, 30.0
	c := benchtest.Idling(108)
	c.Loop.Layout = "inlet-thermostat"
	c.Complaint.Symptoms = []cases.Symptom{"coolant-loss", "bubbles-in-bottle", "hoses-hard-cold"}
	c.Rounds[0].SpeedKmh, c.Rounds[0].MinutesSinceStart = &speed, &minutes
	seen := true
	c.Tests = []cases.Test{{Kind: "bubbles", Stage: cases.BeforeRepair, Seen: &seen}}
	d, q := benchtest.Waiting(t, c)
	q.RunAll()
	data := dataOf(d)
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
	d, q = benchtest.Waiting(t, benchtest.Idling(90))
	q.RunAll()
	if data := dataOf(d); data.Order != "most learned per minute first" || strings.Contains(data.Checks[0].Worth, "proves") {
		t.Errorf("with nothing settled %q, the first check %q", data.Order, data.Checks[0].Worth)
	}
}
