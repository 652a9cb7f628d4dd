package diagnosis_test

import (
	"slices"
	"sort"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/trial"
)

// walks are the trial's names of the rounds that the advice may ask for.
var walks = map[string]string{"2500 rpm": likelihood.RaisedIdle, "hot idle": likelihood.HotIdle, "after the road": likelihood.AfterRoad}

// told is a trial car of which one finds out by and by: its case so far, what
// isn't told yet by the check that tells it, and the minutes spent.
type told struct {
	c       cases.Case
	truth   cases.Cause
	rounds  map[string]cases.Round
	tests   map[string]cases.Test
	order   []string // in which people choose the tests
	minutes float64
}

// newTold begins with what the customer says first and a walk round the idling,
// warm engine.
func newTold(whole cases.Case) *told {
	o := &told{c: whole, truth: whole.Verdict.Cause, rounds: map[string]cases.Round{}, tests: map[string]cases.Test{}}
	o.c.Verdict, o.c.Codes, o.c.Tests, o.c.Rounds = cases.Verdict{}, nil, nil, nil
	o.c.Complaint.Symptoms = whole.Complaint.Symptoms[:min(1, len(whole.Complaint.Symptoms))]
	for _, r := range whole.Rounds {
		if walk, ok := walks[r.Label]; ok {
			o.rounds[walk] = r
		} else if r.Label == "warm idle" {
			o.c.Rounds = append(o.c.Rounds, r)
		}
	}
	for _, t := range whole.Tests {
		o.tests[string(t.Kind)] = t
		o.order = append(o.order, string(t.Kind))
	}
	return o
}

func (o *told) knows(check string) bool {
	_, round := o.rounds[check]
	_, test := o.tests[check]
	return round || test
}

// tell does a check, once.
func (o *told) tell(check string, minutes float64) {
	if r, ok := o.rounds[check]; ok {
		o.c.Rounds = append(slices.Clone(o.c.Rounds), r)
		sort.SliceStable(o.c.Rounds, func(i, j int) bool { return o.c.Rounds[i].Taken.Before(o.c.Rounds[j].Taken) })
	} else {
		o.c.Tests = append(slices.Clone(o.c.Tests), o.tests[check])
	}
	delete(o.rounds, check)
	delete(o.tests, check)
	o.minutes += minutes
}

// advised does what the ranking advises and the car can tell, until nothing is
// left or the minutes are spent.
func (o *told) advised(t *testing.T, b bench, most float64) diagnosis.Ranking {
	for {
		r := b.rank(t, o.c, diagnosis.Prior{})
		next := slices.DeleteFunc(b.judge.Next(r), func(c diagnosis.Check) bool {
			return !o.knows(c.Check.Check) || o.minutes+c.Minutes > most
		})
		if len(next) == 0 {
			return r
		}
		o.tell(next[0].Check.Check, next[0].Minutes)
	}
}

// chosen does the tests that people choose for a car, who half know what is
// wrong with it, until the minutes are spent.
func (o *told) chosen(t *testing.T, b bench, costs map[string]float64, most float64) diagnosis.Ranking {
	for _, check := range o.order {
		if o.minutes+costs[check] <= most {
			o.tell(check, costs[check])
		}
	}
	return b.rank(t, o.c, diagnosis.Prior{})
}

// What the advised next checks are worth: the same cars and the same minutes, by
// the advice and by the order that people choose for the fault. The ordinary run only holds
// that an hour of advice helps; with -split 100 -draws 60 the figures are worth reading.
func TestAdvisedChecksTell(t *testing.T) {
	cars, budgets := trial.Cases(23, *splitCases, trial.Whole), []float64{0, 60}
	if *splitCases >= 50 {
		budgets = []float64{0, 15, 30, 60}
	}
	costs := minutesOf(t)
	advised, chosen := make([][]answered, len(budgets)), make([][]answered, len(budgets))
	for _, c := range cars {
		b := newBench(t)
		b.crowds.Draws = *splitDraws
		for i, minutes := range budgets {
			o := newTold(c)
			advised[i] = append(advised[i], answered{o.truth, o.advised(t, b, minutes)})
			if *splitCases >= 50 {
				p := newTold(c)
				chosen[i] = append(chosen[i], answered{p.truth, p.chosen(t, b, costs, minutes)})
			}
		}
	}
	for i, minutes := range budgets {
		t.Logf("%2.0f minutes as advised: %v", minutes, scored(advised[i]))
		if chosen[i] != nil {
			t.Logf("%2.0f minutes as people choose: %v", minutes, scored(chosen[i]))
		}
	}
	if first, last := scored(advised[0]).logLoss, scored(advised[len(budgets)-1]).logLoss; last > first-0.3 {
		t.Errorf("log loss %.2f at first, %.2f after an hour of advised checks", first, last)
	}
}

// minutesOf is what each check costs.
func minutesOf(t *testing.T) map[string]float64 {
	t.Helper()
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	costs := map[string]float64{}
	for _, c := range tables.Checks() {
		costs[c.Check] = c.Minutes
	}
	return costs
}
