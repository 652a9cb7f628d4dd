package proof

import (
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
)

// tellsFrom is how many times likelier what was measured has to be in a healthy loop than with the repaired fault still
// there; at less it speaks of other things, as temperatures do after a cap was renewed (judgement).
const tellsFrom = 2

// mute reports whether what was measured after the repair tells nothing of the fault that was repaired: neither by the model, nor
// by the rule of every workshop that what was wrong is right under the same condition (common practice).
func (p *Proof) mute(c *cases.Case, f evidence.Findings, after diagnosis.Ranking) bool {
	fault := c.Verdict.Cause
	if !p.Measured || fault == "" || fault == cases.Healthy {
		return false
	}
	speaks := func(finding string) bool { return after.Blames(finding, fault) }
	return after.Apart(fault) < tellsFrom && !p.mended(f, speaks)
}

// telling is the check that would tell of the fault, besides those that are owed; "": none.
func (p *Proof) telling(fault cases.Cause, after diagnosis.Ranking) cases.TestKind {
	by := after.Telling(fault)
	if slices.ContainsFunc(p.Owed(), func(t TestPair) bool { return t.Kind == by }) {
		return ""
	}
	return by
}

// mended reports whether a finding that spoke of the fault before the repair is gone: in the like of its round, or in a log that began alike.
func (p *Proof) mended(f evidence.Findings, speaks func(finding string) bool) bool {
	gone := func(before, now []evidence.Flag) bool {
		return slices.ContainsFunc(before, func(was evidence.Flag) bool {
			return was.Severity != evidence.Note && speaks(was.ID) &&
				!slices.ContainsFunc(now, func(is evidence.Flag) bool { return is.ID == was.ID })
		})
	}
	return slices.ContainsFunc(p.Pairs, func(r Pair) bool { return gone(inRound(f, r.Before), inRound(f, r.After)) }) ||
		slices.ContainsFunc(p.Logs, func(l LogPair) bool {
			return l.Before >= 0 && l.After >= 0 && gone(f.WarmUps[l.Before].Flags, f.WarmUps[l.After].Flags)
		})
}

func inRound(f evidence.Findings, i int) []evidence.Flag {
	return slices.DeleteFunc(slices.Clone(f.Flags), func(f evidence.Flag) bool { return f.Round != i })
}
