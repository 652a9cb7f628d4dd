package report

import (
	"loopbook/cases"
	"loopbook/cases/evidence"
)

// pair are the rounds that show the loop before and after the repair; -1: none.
type pair struct {
	before, after int
	alike         bool // of the same condition
}

// pair is the before round that tells most with its like after the repair. Where
// those that tell anything have no like it is the most telling one and the last
// one after, which the paper then has to say. A round that was only begun shows nothing.
func (m Material) pair() pair {
	like, any := m.likePair(), m.anyPair()
	if like.alike && (outOfRange(m.Found, like.before) > 0 || outOfRange(m.Found, any.before) == 0) {
		return like
	}
	return any
}

func (m Material) likePair() pair {
	p := pair{before: -1, after: -1}
	if m.Proof == nil {
		return p
	}
	for _, like := range m.Proof.Pairs {
		if p.before < 0 || outOfRange(m.Found, like.Before) > outOfRange(m.Found, p.before) {
			p = pair{like.Before, like.After, true}
		}
	}
	return p
}

func (m Material) anyPair() pair {
	p := pair{before: -1, after: -1}
	for i := range m.Case.Rounds {
		switch {
		case !m.Case.Rounds[i].Measured():
		case m.Case.Rounds[i].Stage == cases.AfterRepair:
			p.after = i
		case p.before < 0 || outOfRange(m.Found, i) >= outOfRange(m.Found, p.before):
			p.before = i
		}
	}
	return p
}

func outOfRange(f evidence.Findings, round int) int {
	n := 0
	for _, r := range f.Rounds[round].Readings {
		if r.State.Out() {
			n++
		}
	}
	return n
}
