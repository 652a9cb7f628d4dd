package diagnosis

import (
	"loopbook/cases"
	"loopbook/cases/evidence"
)

// What a repair comes to before it is measured (judgement): four in five end the
// complaint; of the rest one half has the same fault still, the other half
// another one, as workshops meet them.
const (
	repairWorks = 0.8
	sameFault   = 0.1
)

// Repaired judges the stage after a repair by what is known of repairs, rather
// than by what cars come in with: the same evidence, another prior. The ranking
// stays as it is where no fault was repaired.
func (r Ranking) Repaired(cause cases.Cause) Ranking {
	if cause == "" || cause == cases.Healthy || len(r.sheet.prior) == 0 {
		return r
	}
	prior := repairedPrior(r.sheet.prior, cause)
	chance := make([]float64, len(prior))
	for i, p := range r.sheet.chance {
		if was := r.sheet.prior[i]; was > 0 {
			chance[i] = p / was * prior[i]
		}
	}
	r.sheet.prior, r.sheet.chance = prior, toOne(chance)
	r.Causes = sorted(chance)
	return r
}

// Apart is how many times likelier what was measured is in a healthy loop than in one that has that fault.
func (r Ranking) Apart(fault cases.Cause) float64 {
	healthy, _ := r.Of(cases.Healthy)
	ill, _ := r.Of(fault)
	times := healthy.Probability / ill.Probability
	if prior := r.sheet.prior; len(prior) > 0 {
		times *= prior[indexOf(fault)] / prior[indexOf(cases.Healthy)]
	}
	return times
}

// tellingFrom is by which factor a check that passes has to tell a healthy loop from one with a fault to be named for it
// (judgement).
const tellingFrom = 2

// Telling is the check not done yet whose pass would tell a healthy loop best from one that has that fault; "" where none tells
// much. One of the old part says nothing of the car.
func (r Ranking) Telling(fault cases.Cause) cases.TestKind {
	s, healthy, at := &r.sheet, indexOf(cases.Healthy), indexOf(fault)
	if s.tables == nil {
		return "" // made by hand
	}
	done := outcomes(s.c, r.Stage)
	best, most := cases.TestKind(""), float64(tellingFrom)
	for _, kind := range cases.Words[cases.TestKind]() {
		if _, isDone := outcomeOf(done, kind); isDone || OfOldPart(kind) {
			continue
		}
		for _, o := range s.tables.Outcomes(kind) {
			if times := o.P[healthy] / o.P[at]; evidence.Passed(o.Word) && times >= most {
				best, most = kind, times
			}
		}
	}
	return best
}

// Blames reports whether a finding is likelier with that fault than in a healthy loop.
func (r Ranking) Blames(finding string, fault cases.Cause) bool {
	if r.sheet.tables == nil {
		return false // made by hand
	}
	f, ok := r.sheet.tables.Finding(finding)
	return ok && f.Log[indexOf(fault)] > f.Log[indexOf(cases.Healthy)]
}

func repairedPrior(usual []float64, cause cases.Cause) []float64 {
	healthy, same := indexOf(cases.Healthy), indexOf(cause)
	others := 1 - usual[healthy] - usual[same]
	out := make([]float64, len(usual))
	for i, p := range usual {
		switch i {
		case healthy:
			out[i] = repairWorks
		case same:
			out[i] = sameFault
		default:
			out[i] = p / others * (1 - repairWorks - sameFault)
		}
	}
	return out
}

// MeasuredAfter reports whether anything was measured after the repair.
func MeasuredAfter(c *cases.Case) bool {
	for i := range c.Rounds {
		if r := &c.Rounds[i]; r.Stage == cases.AfterRepair && r.Measured() {
			return true
		}
	}
	for i := range c.Logs {
		if c.Logs[i].Stage == cases.AfterRepair && len(c.Logs[i].EctC) > 0 {
			return true
		}
	}
	for i := range c.Tests {
		if t := &c.Tests[i]; t.Stage == cases.AfterRepair && evidence.Outcome(c, t) != "" {
			return true
		}
	}
	return false
}

// OfOldPart reports whether a check is of a part by itself, which can be done once the part has left
// the car, and only then tells of the time before.
func OfOldPart(k cases.TestKind) bool { return k == cases.BenchTest || k == cases.SensorTest }

// gone reports whether a check would meet the car as it was before a repair that has been made: what it
// showed then can't be read any more.
func (s *sheet) gone(check cases.TestKind) bool {
	return s.plan.Stage == cases.BeforeRepair && !OfOldPart(check) && MeasuredAfter(s.c)
}
