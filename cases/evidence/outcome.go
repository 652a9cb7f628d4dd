package evidence

import (
	"loopbook/cases"
	"loopbook/diagram/say"
)

// The outcomes of a check that finds nothing wrong: of the whole of it, or of what of it was noted.
const (
	Pass       = "pass"
	PassInPart = "pass-in-part"
)

// Passed reports whether an outcome found nothing wrong.
func Passed(outcome string) bool { return outcome == Pass || outcome == PassInPart }

// Outcome is how a workshop check comes out, in one word: Pass, PassInPart, or what the
// check's flag tells of. It is "" where the test holds nothing to judge by. Of
// several findings the one that decides most names it.
//
//	pressure-hold      slight, fails
//	cap                weak, late, vacuum-stuck
//	combustion-gas     positive
//	coolant            too-strong, far-too-strong, too-weak, far-too-weak, fouled, rusty, ph-out, stray
//	thermostat-bench   shut, open, early, late, small-lift
//	sensor-resistance  low, high: what the sensor would show
//	fan                dead, runs, late
//	level              low, empty
//	pump-drive         belt, play, weeps
//	hose-look          collapses
//	core-scan          patch, hot-patch, hot-through, cold-through
//	bubbles            seen
//	heater-flow        weak, none
func Outcome(c *cases.Case, t *cases.Test) string { return judgeTest(c, t).outcome }

// OutcomeAndUnseen is the outcome, with those that a check which passed doesn't speak against, since what would show
// them wasn't noted: a cap whose vacuum valve nobody tried may have one that sticks.
func OutcomeAndUnseen(c *cases.Case, t *cases.Test) (outcome string, unseen []string) {
	j := judgeTest(c, t)
	return j.outcome, j.unseen
}

// OutcomeText tells an outcome of a kind of check, in the trade's words.
func OutcomeText(kind cases.TestKind, outcome string) say.Text {
	if outcome == PassInPart {
		return say.Of("outcome.pass-in-part")
	}
	return say.Of("outcome." + string(kind) + "." + outcome)
}

// OutcomeTexts tells several, as a list.
func OutcomeTexts(kind cases.TestKind, outcomes []string) say.Text {
	var out []say.Text
	for _, o := range outcomes {
		out = append(out, OutcomeText(kind, o))
	}
	return say.Items(out...)
}

// FillOutcome is the outcome of the coolant check by the strength that the case
// states, "" where it states none or a test measured it. What was stated needs
// not have been measured.
func FillOutcome(c *cases.Case) string { return judgeFill(c).outcome }

// judgement is what a check comes to: its outcome, and what is to be told.
type judgement struct {
	outcome string
	flags   []Flag
	unseen  []string
}

// found is the judgement of a check with one finding.
func found(outcome string, f Flag) judgement {
	return judgement{outcome: outcome, flags: []Flag{f}}
}

// passIf passes a check that held something to judge by.
func passIf(judged bool) judgement {
	if judged {
		return judgement{outcome: Pass}
	}
	return judgement{}
}

// but takes back from a pass what it doesn't show where something wasn't noted.
func (j *judgement) but(missing bool, unseen ...string) {
	if missing && Passed(j.outcome) {
		j.unseen = append(j.unseen, unseen...)
	}
}

// inPart is a pass of a check of which something that its words tell of wasn't noted.
func (j *judgement) inPart(missing bool) {
	if missing && j.outcome == Pass {
		j.outcome = PassInPart
	}
}

// add tells of a finding; the first one names the outcome.
func (j *judgement) add(outcome string, f Flag) {
	if j.outcome == "" || j.outcome == Pass {
		j.outcome = outcome
	}
	j.flags = append(j.flags, f)
}
