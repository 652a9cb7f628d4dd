package diagnosis

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// Beside is what the judged cause leaves open: checks that came out badly for which it is no
// reason, and the faults that would be one. A ranking asks which one cause explains all of a
// case; a car may have two.
type Beside struct {
	Of     cases.Cause // the verdict, or what is likelier than all else
	Checks []Outcome
	Causes []Ranked // with their chances if it is one of the other faults
	Next   []Check  // that tell those apart, the most told per minute first
}

const (
	judgedFrom    = 0.5 // the chance from which a cause that is no verdict yet counts as judged
	otherwiseFrom = 7.0 // a check is open where another fault makes its outcome so many times as likely
	besideFrom    = 0.1 // the chance from which another fault is named
	besideMost    = 3
	besideBits    = 0.15 // what a check must promise of the second fault to be named
)

// Beside asks what the judged cause leaves open; nil: nothing, nothing is judged yet, or another
// cause that is still likely enough would explain it all. The thresholds are judgement.
func (j *Judge) Beside(r Ranking) *Beside {
	s := &r.sheet
	b := &Beside{Of: judged(r)}
	if b.Of == "" {
		return nil
	}
	done, logs := outcomes(s.c, s.plan.Stage), s.others(b.Of)
	alone := b.rivals(r) // those that may be all of it by themselves
	for _, o := range done {
		f, known := j.tables.Test(o.Kind, o.Word, o.Unseen...)
		if !known {
			continue
		}
		if evidence.Passed(o.Word) {
			for i := range logs {
				logs[i] += f.Log[i]
			}
			continue
		}
		alone = slices.DeleteFunc(alone, func(c cases.Cause) bool { return leavesOpen(f, c) })
		if leavesOpen(f, b.Of) {
			b.Checks = append(b.Checks, o)
			for i := range logs {
				logs[i] += math.Log(reason(f, i))
			}
		}
	}
	if len(b.Checks) == 0 || len(alone) > 0 {
		return nil
	}
	chance := normalised(logs)
	b.Causes, b.Next = named(chance), j.tellApart(s, done, chance)
	return b
}

// judged is the cause that the case is taken to have: the verdict, where it is of this stage, or one
// that is likelier than all others together.
func judged(r Ranking) cases.Cause {
	if v := r.sheet.c.Verdict.Cause; v != "" && r.Stage == cases.BeforeRepair {
		return v
	}
	if first := r.Causes[0]; !r.Blank && first.Probability >= judgedFrom {
		return first.Cause
	}
	return ""
}

// rivals are the causes that are still likely enough beside the judged one; a verdict has none.
func (b *Beside) rivals(r Ranking) []cases.Cause {
	if r.sheet.c.Verdict.Cause == b.Of {
		return nil
	}
	var out []cases.Cause
	for _, c := range r.Causes {
		if c.Cause != b.Of && c.Probability >= besideFrom {
			out = append(out, c.Cause)
		}
	}
	return out
}

// leavesOpen reports whether a check came out in a way for which a cause is no reason.
func leavesOpen(f likelihood.Factor, c cases.Cause) bool {
	return slices.Max(f.Log)-f.Log[indexOf(c)] >= math.Log(otherwiseFrom)
}

// others are the logarithms of the chances before the case of all faults but one.
func (s *sheet) others(but cases.Cause) []float64 {
	logs := make([]float64, len(s.prior))
	for i, p := range s.prior {
		logs[i] = math.Log(p)
	}
	logs[indexOf(cases.Healthy)], logs[indexOf(but)] = math.Inf(-1), math.Inf(-1)
	return logs
}

// reason is how far a cause is a reason for an outcome that healthy loops have too: two open
// checks may have two reasons, so none counts as impossible.
func reason(f likelihood.Factor, cause int) float64 {
	return max(math.Exp(f.Log[cause])-math.Exp(f.Log[indexOf(cases.Healthy)]), 0.005)
}

func named(chance []float64) []Ranked {
	all := sorted(chance)
	n := 0
	for n < besideMost && all[n].Probability >= besideFrom {
		n++
	}
	return all[:n]
}

// tellApart are the checks not done yet by what they tell of faults with those chances.
func (j *Judge) tellApart(s *sheet, done []Outcome, chance []float64) []Check {
	var out []Check
	hot, low := s.overheated(), foundLow(done)
	for _, row := range j.tables.Checks() {
		check, ok := j.informed(Minded(row, s.c.Loop.Fan, hot, low), chance, done)
		if ok && check.Bits >= besideBits && !s.bars(row, done) {
			out = append(out, check)
		}
	}
	byWorth(out)
	return out
}

// checks tell how each came out.
func (b *Beside) checks() []say.Text {
	out := make([]say.Text, len(b.Checks))
	for i, o := range b.Checks {
		out[i] = likelihood.CameOut(o.Kind, o.Word)
	}
	return out
}

func (b *Beside) names(c cases.Cause) bool {
	return b != nil && slices.ContainsFunc(b.Causes, func(r Ranked) bool { return r.Cause == c })
}

// Words tell what is open and what it would be.
func (b *Beside) Words() say.Text {
	causes := make([]say.Text, len(b.Causes))
	for i, c := range b.Causes {
		causes[i] = say.Of("beside.chance", c.Cause.Text(), Chance(c.Probability))
	}
	return say.Sentences(say.Of("beside.open", b.Of.Text(), say.Items(b.checks()...)), say.Of("beside.would", say.List(causes...)), say.Of("beside.again"))
}
