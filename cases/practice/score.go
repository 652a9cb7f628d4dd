package practice

import (
	"math"

	"loopbook/cases"
)

// Score is what an answer is worth.
//
// It is the logarithmic score (Good 1952), the only one that looks at nothing but the
// chance given to the truth, and under which nobody gains by saying other than they
// think: the binary logarithm of how many times as likely the trainee held the truth
// as who knows nothing. 0 is as good as guessing; below is worse.
type Score struct {
	None   bool // nothing was named
	Right  bool
	TruthP float64 // the chance that the answer gave to the truth
	Bits   float64
	Most   float64 // who was sure and right has so many
}

// The least and the most that somebody can be sure: certainty would lose without end.
const (
	LeastSure = 0.05
	MostSure  = 0.99
)

// ScoreOf is the worth of naming a cause with a confidence: the rest of the chance is
// taken to lie on all others alike. Who names none knows nothing.
func ScoreOf(named, truth cases.Cause, confidence float64) Score {
	all := float64(len(cases.Words[cases.Cause]()))
	confidence = min(max(confidence, LeastSure), MostSure)
	s := Score{Right: named == truth, TruthP: confidence, Most: math.Log2(MostSure * all)}
	switch {
	case named == "":
		s.None, s.Right, s.TruthP = true, false, 1/all
	case !s.Right:
		s.TruthP = (1 - confidence) / (all - 1)
	}
	s.Bits = math.Log2(s.TruthP * all)
	return s
}

// Verdict is what a score is worth in one word.
type Verdict string

// The verdicts.
const (
	Sure    Verdict = "sure"    // right and sure
	Careful Verdict = "careful" // right and unsure
	Modest  Verdict = "modest"  // wrong, and not sure of it
	Rash    Verdict = "rash"    // wrong and sure
	Nothing Verdict = "none"    // was named
)

// half is from where on a wrong answer counts as sure, and trusting from where on a right one does
// (judgement): who gives it even odds has not trusted it.
const (
	half     = 0.5
	trusting = 0.7
)

// Verdict is the score in a word.
func (s Score) Verdict() Verdict {
	all := float64(len(cases.Words[cases.Cause]()))
	switch {
	case s.None:
		return Nothing
	case s.Right && s.TruthP >= trusting:
		return Sure
	case s.Right:
		return Careful
	case s.TruthP >= (1-half)/(all-1)-1e-9:
		return Modest
	}
	return Rash
}
