package mind

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

// Guess ranks the case without simulating its loop, which would take seconds for
// each: by symptoms, codes, rules of the trade and checks.
func (m *Mind) Guess(c cases.Case) cases.Guess {
	truth := c.Verdict.Cause
	if truth == "" {
		return cases.Guess{}
	}
	return GuessOf(m.Weigh(&c, m.Asked(&c), nil, diagnosis.Prior{}).Ranking, truth)
}

// GuessOf is what a ranking held likeliest, against the verdict.
func GuessOf(r diagnosis.Ranking, verdict cases.Cause) cases.Guess {
	truth, _ := r.Of(verdict)
	return cases.Guess{First: r.Causes[0].Cause, FirstP: r.Causes[0].Probability, TruthP: truth.Probability}
}
