package report

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// pair are the rounds that show the loop before and after the repair; -1: none.
type pair struct {
	before, after int
	alike         bool // of the same condition
}

// pair is the before round that tells most with its like after the repair. Where
// those that tell anything have no like it is the most telling one and the last
// one after, which the paper then has to say. Where the fault is still there the round after that tells most of it is shown. A round that was only begun shows nothing.
func (m Material) pair() pair {
	like, any := m.likePair(), m.anyPair()
	if m.stillWrong() && any.after >= 0 && like.alike && m.shows(any.after) > m.shows(like.after) {
		return m.withItsLike(any)
	}
	if like.alike && m.tells(like, any) {
		return like
	}
	return any
}

// tells reports whether a pair shows before the repair what was wrong, if any round does.
func (m Material) tells(like, any pair) bool {
	return m.Found.Rounds[like.before].Out() > 0 || m.Found.Rounds[any.before].Out() == 0
}

// withItsLike is a pair whose round after the repair stands beside its like, where it has one that tells anything.
func (m Material) withItsLike(p pair) pair {
	for _, like := range m.Proof.Pairs {
		if q := (pair{like.Before, like.After, true}); q.after == p.after && m.tells(q, p) {
			return q
		}
	}
	return p
}

// stillWrong reports whether the repair is shown not to have worked, so that the page has to show by what.
func (m Material) stillWrong() bool { return m.Proof != nil && m.Proof.Verdict == proof.NotFixed }

func (m Material) likePair() pair {
	p := pair{before: -1, after: -1}
	if m.Proof == nil {
		return p
	}
	for _, like := range m.Proof.Pairs {
		if p.before < 0 || m.tellsMore(like.Before, p.before) {
			p = pair{like.Before, like.After, true}
		}
	}
	return p
}

// tellsMore is of two rounds before the repair; where as much stands out in both, the warmer engine tells more.
func (m Material) tellsMore(i, j int) bool {
	a, b := m.Found.Rounds[i], m.Found.Rounds[j]
	if a.Out() != b.Out() || a.EngineC == nil || b.EngineC == nil {
		return a.Out() > b.Out()
	}
	return *a.EngineC > *b.EngineC
}

func (m Material) anyPair() pair {
	p := pair{before: -1, after: -1}
	for i := range m.Case.Rounds {
		switch {
		case !m.Case.Rounds[i].Measured():
		case m.Case.Rounds[i].Stage == cases.AfterRepair:
			if p.after < 0 || !m.stillWrong() || m.shows(i) >= m.shows(p.after) {
				p.after = i
			}
		case p.before < 0 || m.shows(i) >= m.shows(p.before):
			p.before = i
		}
	}
	return p
}

// shows is how much a round shows of the fault: more than any warm-up does a round in which anything is out once the
// engine is warm, or ought to be.
func (m Material) shows(round int) int {
	r, most := m.Found.Rounds[round], len(diagram.Points())
	if out := r.Out(); out == 0 || r.Regime == evidence.Shut {
		return out
	}
	return most + r.Out()
}
