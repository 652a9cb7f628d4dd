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
	Proof bool          // it would prove the cause that is as good as settled
	Again bool          // it was done and found nothing, which clears nothing
	Open  []string      // the outcomes that it left open: it was done and found nothing in what was noted
	Hot   bool          // the engine is run for it, which has been too hot
	Low   bool          // the engine is run for it, and its coolant was found low
	Fan   cases.FanKind // of the car
}

// Minded is a check as it is done on a car with that fan, whose engine was too hot or its coolant found low, or not.
func Minded(c likelihood.Check, fan cases.FanKind, overheated, low bool) Check {
	return Check{Check: c, Hot: overheated && c.RunsEngine, Low: low && c.RunsEngine, Fan: fan}
}

// Overheated reports whether the engine was so hot in a round or log that causes are judged by that
// it had to be switched off.
func Overheated(c *cases.Case, found evidence.Findings) bool {
	return overheated(c, found, StageOf(c))
}

func overheated(c *cases.Case, found evidence.Findings, stage cases.Stage) bool {
	for i := range c.Rounds {
		if stage.Holds(c.Rounds[i].Stage) && evidence.TooHotToRun(&c.Rounds[i], found.Rounds[i]) {
			return true
		}
	}
	return slices.ContainsFunc(found.WarmUps, func(w evidence.WarmUp) bool { return stage.Holds(w.Stage) && w.TooHotToRun() })
}

// Caution is what to mind first, and that the engine has been too hot.
func (c Check) Caution() say.Text {
	caution := c.Check.Caution()
	if c.Kind() == cases.FanTest && c.Fan.ByBelt() {
		caution = say.Of("check.fan.belt-caution")
	}
	var first []say.Text
	if c.Low {
		first = append(first, say.Of("check.low"))
	}
	if c.Hot {
		first = append(first, say.Of("check.overheats"))
	}
	return say.Sentences(append(first, caution)...)
}

// LevelLow reports whether the coolant was last found low: it is filled up before the engine runs for a check.
func LevelLow(c *cases.Case) bool { return foundLow(outcomes(c, StageOf(c))) }

func foundLow(done []Outcome) bool { return cameOut(done, cases.LevelTest, "low") }

// PerMinute is the expected information for each minute, by which checks are
// ordered.
func (c Check) PerMinute() float64 { return c.Bits / c.Minutes }

// leastBits is what a check must promise to be named; beside a fault that is as sure as sureFrom no
// promise is worth its minutes, but what proves it (both judgement).
const (
	leastBits = 0.01
	sureFrom  = 0.99
)

// Next are the checks that aren't done yet, the most told per minute first; before them what
// would prove a cause that is as good as settled. One that nothing proves isn't left to a walk
// or to no check at all: it has the test that tells most per minute.
func (j *Judge) Next(r Ranking) []Check {
	s := &r.sheet
	done := outcomes(s.c, s.plan.Stage)
	may := asking{j, s, done, s.joint(), j.proof(s, done), s.overheated(), foundLow(done)}
	sure := s.settled(sureFrom)
	var out []Check
	var best Check    // of the tests, by what it tells per minute
	promised := false // one of them is named anyhow, unless a fault is sure
	for _, row := range j.tables.Checks() {
		for _, c := range may.ask(row) {
			// sure or not: nobody renews a part beside a lamp that nobody asked
			if c.Proof || c.Bits >= leastBits && (!sure || row.Check == likelihood.ReadCodes) {
				out = append(out, c)
			}
			if row.Kind() == "" || c.Bits <= 0 {
				continue
			}
			promised = promised || c.Bits >= leastBits
			if best.Bits == 0 || c.PerMinute() > best.PerMinute() {
				best = c
			}
		}
	}
	if may.proof == "" && best.Bits > 0 && (sure || !promised && s.settled(settledFrom)) {
		out = append(out, best)
	}
	byWorth(out)
	return out
}

// asking is what is known of a case when its next checks are looked for.
type asking struct {
	j        *Judge
	s        *sheet
	done     []Outcome
	joint    weights
	proof    cases.TestKind // the test that would prove what is as good as settled, or ""
	hot, low bool           // the engine was overheated, its coolant found low
}

// ask are the ways in which a check may come next, with what each is expected to tell; none where it can't, or was done.
func (a asking) ask(row likelihood.Check) []Check {
	check, kind := Minded(row, a.s.c.Loop.Fan, a.hot, a.low), row.Kind()
	switch {
	case a.s.bars(row, a.done), a.s.gone(kind), kind != a.proof && a.s.feltBefore(kind):
	case row.Check == likelihood.WarmUp && a.s.warmUpLogged():
	case row.Check == likelihood.ReadCodes:
		if a.s.lampUnread() {
			check.Bits = testBits(a.s.chance, a.j.tables.CodeOutcomes())
			return []Check{check}
		}
	case row.Check == likelihood.HosePoint:
		var out []Check
		for _, p := range a.s.unread() {
			check.Point, check.Bits = p, a.s.pointBits(a.joint, p)
			out = append(out, check)
		}
		return out
	case kind == "": // a walk
		if n := slices.Index(a.s.plan.Ahead, row.Check); n >= 0 && a.s.plan.wanted(a.s.c, row.Check) {
			check.Bits = a.s.aheadBits(a.joint, n)
			return []Check{check}
		}
	case kind == a.proof && kind == cases.GasTest && cameOut(a.done, kind, evidence.Pass):
		check.Proof, check.Again = true, true // T23: one negative doesn't clear the engine
		return []Check{check}
	default:
		if check, ok := a.j.informed(check, a.s.chance, a.done); ok {
			check.Proof = kind == a.proof
			return []Check{check}
		}
	}
	return nil
}

// byWorth puts a proof first, then the most told per minute.
func byWorth(checks []Check) {
	sort.SliceStable(checks, func(a, b int) bool {
		if checks[a].Proof != checks[b].Proof {
			return checks[a].Proof
		}
		return checks[a].PerMinute() > checks[b].PerMinute()
	})
}

// settled reports whether a fault is as likely as that at least.
func (s *sheet) settled(from float64) bool {
	for cause, p := range s.chance {
		if p >= from && causeAt(cause) != cases.Healthy {
			return true
		}
	}
	return false
}

// outcomeOf is how a check came out; it is false where it isn't done.
func outcomeOf(done []Outcome, kind cases.TestKind) (Outcome, bool) {
	i := slices.IndexFunc(done, func(o Outcome) bool { return o.Kind == kind })
	if i < 0 {
		return Outcome{}, false
	}
	return done[i], true
}

// informed is a workshop check with what it is expected to tell of causes with those chances: in all its ways where it
// isn't done yet, else in those that its pass left open. It is false where there are none.
func (j *Judge) informed(check Check, chance []float64, done []Outcome) (Check, bool) {
	kind := check.Kind()
	was, isDone := outcomeOf(done, kind)
	outcomes := j.tables.Outcomes(kind)
	if isDone {
		outcomes = j.tables.Left(kind, was.Unseen)
	}
	check.Bits, check.Open = testBits(chance, outcomes), was.Unseen
	return check, len(outcomes) > 1
}

// cameOut reports whether a check has come out so.
func cameOut(done []Outcome, kind cases.TestKind, word string) bool {
	o, was := outcomeOf(done, kind)
	return was && o.Word == word
}

// bars reports whether the engine may not be run for the check: it is without coolant, or may have it in
// its oil, or is so hot that it has to cool first, which a check that begins cold waits for. Nor may a fan
// be tried that isn't there.
func (s *sheet) bars(check likelihood.Check, done []Outcome) bool {
	if check.Kind() == cases.FanTest && s.c.Loop.Fan == cases.NoFan {
		return true
	}
	off := cameOut(done, cases.LevelTest, "empty") || evidence.MilkyOil(s.c)
	return check.RunsEngine && (off || check.Needs != likelihood.Cold && s.tooHot())
}

// tooHot reports whether the engine was last seen so hot that it is to be switched
// off: then nothing is asked for that needs it to run.
func (s *sheet) tooHot() bool {
	i := s.plan.lastWarmth(s.c)
	return i >= 0 && evidence.TooHotToRun(&s.c.Rounds[i], s.found.Rounds[i])
}

func (s *sheet) overheated() bool { return overheated(s.c, s.found, s.plan.Stage) }

// lampUnread reports whether a lamp was lit whose code nobody noted. Without a lamp an empty list may
// as well say that the codes were read and none was there.
func (s *sheet) lampUnread() bool {
	return s.plan.Stage == cases.BeforeRepair && len(s.c.Codes) == 0 && slices.Contains(s.c.Complaint.Symptoms, "warning-light")
}

// logged reports whether the stage has a log of the engine already.
func (s *sheet) logged() bool {
	return slices.ContainsFunc(s.c.Logs, func(l cases.Log) bool { return s.plan.Stage.Holds(l.Stage) && len(l.EctC) > 0 })
}

// warmUpLogged reports whether one of them begins with a cold engine: of another nobody can tell how it warms.
func (s *sheet) warmUpLogged() bool {
	return slices.ContainsFunc(s.found.WarmUps, func(w evidence.WarmUp) bool {
		return s.plan.Stage.Holds(w.Stage) && w.Result.ColdStart
	})
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
