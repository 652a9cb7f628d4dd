package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/cases/evidence"
)

// From settledFrom on a cause is to be proved and no longer told apart from others: a ranking is
// no proof, and parts are renewed on one. A check proves it that finds it in most cars that have
// it, and so many times as often as in others. One that passed proves nothing any more. Judgement.
const (
	settledFrom = 0.9
	provesMost  = 0.5
	provesTimes = 5
)

// proof is the check by which the cause that is as good as settled shows itself best; "" where
// none is settled or none would, or where codes are to be read before anything is taken apart.
func (j *Judge) proof(s *sheet, done []Outcome) cases.TestKind {
	if s.lampUnread() {
		return ""
	}
	best, proof := 0.0, cases.TestKind("")
	for cause, p := range s.chance {
		if p < settledFrom || causeAt(cause) == cases.Healthy {
			continue
		}
		for _, row := range j.tables.Checks() {
			kind := row.Kind()
			outcomes := j.tables.Outcomes(kind)
			if was, isDone := outcomeOf(done, kind); isDone && evidence.Passed(was.Word) && kind != cases.GasTest { // that one is repeated
				outcomes = j.tables.Left(kind, was.Unseen)
			}
			for _, o := range outcomes {
				with, times := o.P[cause], o.P[cause]/s.among(o.P, cause)
				if worth := with * math.Log(times); o.Word != evidence.Pass && with >= provesMost && times >= provesTimes && worth > best {
					best, proof = worth, kind
				}
			}
		}
	}
	return proof
}

// among is how often an outcome is met in cars with other causes, as workshops meet them.
func (s *sheet) among(p []float64, but int) float64 {
	sum, all := 0.0, 0.0
	for i, prior := range s.prior {
		if i != but {
			sum, all = sum+prior*p[i], all+prior
		}
	}
	return sum / all
}
