package diagnosis

import (
	"slices"
	"sort"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Check is a next step with what it is expected to tell.
type Check struct {
	likelihood.Check
	Point diagram.Point // of a hose to read; "": none
	Bits  float64       // expected information about the cause
	Hot   bool          // the engine is run for it, which has been too hot
}

// Caution is what to mind first, and that the engine has been too hot.
func (c Check) Caution() say.Text {
	if c.Hot {
		return say.Sentences(say.Of("check.overheats"), c.Check.Caution())
	}
	return c.Check.Caution()
}

// PerMinute is the expected information for each minute, by which checks are
// ordered.
func (c Check) PerMinute() float64 { return c.Bits / c.Minutes }

// leastBits is what a check must promise to be named.
const leastBits = 0.01

// Next are the checks that aren't done yet, the most told per minute first.
func (j *Judge) Next(r Ranking) []Check {
	s := &r.sheet
	var out []Check
	offer := func(c Check) {
		if c.Bits >= leastBits {
			out = append(out, c)
		}
	}
	done := outcomes(s.c, s.plan.Stage)
	joint := s.joint()
	for _, check := range j.tables.Checks() {
		kind := cases.TestKind(check.Check)
		switch {
		case s.bars(check, done):
		case check.Check == likelihood.WarmUp && s.logged():
		case check.Check == likelihood.HosePoint:
			for _, p := range s.unread() {
				offer(Check{check, p, s.pointBits(joint, p), s.heats(check)})
			}
		case slices.Contains(likelihood.Walks(), check.Check):
			if n := slices.Index(s.plan.Ahead, check.Check); n >= 0 && s.plan.wanted(s.c, check.Check) {
				offer(Check{check, "", s.aheadBits(joint, n), s.heats(check)})
			}
		case !isDone(done, kind):
			offer(Check{check, "", testBits(s.chance, j.tables.Outcomes(kind)), s.heats(check)})
		}
	}
	byWorth(out)
	return out
}

// byWorth puts the most told per minute first.
func byWorth(checks []Check) {
	sort.SliceStable(checks, func(a, b int) bool { return checks[a].PerMinute() > checks[b].PerMinute() })
}

func isDone(done []outcome, kind cases.TestKind) bool {
	return slices.ContainsFunc(done, func(o outcome) bool { return o.kind == kind })
}

// bars reports whether the engine may not be run for the check: it is without coolant, or so
// hot that it has to cool first, which a check that begins cold waits for.
func (s *sheet) bars(check likelihood.Check, done []outcome) bool {
	dry := slices.Contains(done, outcome{"level", "empty"})
	return check.RunsEngine && (dry || check.Needs != likelihood.Cold && s.tooHot())
}

// tooHot reports whether the engine was last seen so hot that it is to be switched
// off: then nothing is asked for that needs it to run. A round that is only begun saw
// nothing.
func (s *sheet) tooHot() bool {
	for stop := s.last(); stop >= 0; stop-- {
		i := s.plan.Rounds[stop]
		if r := &s.c.Rounds[i]; r.TellsWarmth() {
			return evidence.TooHotToRun(r, s.found.Rounds[i])
		}
	}
	return false
}

// heats reports whether the engine is run for a check, which was so hot before that it had to be
// switched off.
func (s *sheet) heats(check likelihood.Check) bool {
	return check.RunsEngine && slices.ContainsFunc(s.plan.Rounds, func(i int) bool { return evidence.TooHotToRun(&s.c.Rounds[i], s.found.Rounds[i]) })
}

// logged reports whether the stage has a log of a warm-up already.
func (s *sheet) logged() bool {
	return slices.ContainsFunc(s.c.Logs, func(l cases.Log) bool { return s.plan.Stage.Holds(l.Stage) && len(l.EctC) > 0 })
}

// last is the last stop that was walked.
func (s *sheet) last() int { return len(s.plan.Rounds) - 1 }

// unread are the points that the last round could still have.
func (s *sheet) unread() []diagram.Point {
	if s.crowd == nil || s.last() < 0 {
		return nil
	}
	round := &s.c.Rounds[s.plan.Rounds[s.last()]]
	if s.plan.stillCold(round) && s.logged() { // the warm-up went on: what it showed then is gone
		return nil
	}
	var out []diagram.Point
	for _, at := range s.plan.Setting.Loop.Points {
		if at.Point != diagram.AirOn && round.Reading(at.Point) == nil {
			out = append(out, at.Point)
		}
	}
	return out
}
