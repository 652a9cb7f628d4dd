package proof

import (
	"math"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// Two rounds have the same condition within these limits (judgement: closer
// than what moves a hose by more than the gun's own error).
const (
	rpmLike   = 200.0 // or a sixth of the speed, where that is more
	rpmPart   = 6.0
	kmhLike   = 15.0
	warmMin   = 15.0 // minutes from a cold start after which an engine counts as warm
	minLike   = 3.0
	soakMin   = 60.0 // what a warm engine runs longer counts as a limit does; it parts no rounds
	airLikeK  = 8.0
	differing = 1.0 // of a limit
)

// comparison is how like the conditions of two rounds are.
type comparison struct {
	distance float64    // 0: the same; the sum of each condition's part of its limit
	differs  []say.Text // conditions outside their limits
	open     []say.Text // conditions that aren't noted in both
}

func (c *comparison) number(name string, a, b *float64, limit float64) {
	if a == nil || b == nil {
		c.open = append(c.open, say.Of("proof.condition."+name))
		return
	}
	part := math.Abs(*a-*b) / limit
	c.distance += part
	if part > differing {
		c.differs = append(c.differs, say.Of("proof.condition."+name))
	}
}

func (c *comparison) word(name string, same, known bool) {
	switch {
	case !known:
		c.open = append(c.open, say.Of("proof.condition."+name))
	case !same:
		c.distance++
		c.differs = append(c.differs, say.Of("proof.condition."+name))
	}
}

// compare holds two rounds of a case against each other. The engine's speed has
// to be known: without it nothing is like.
func compare(c *cases.Case, before, after int) comparison {
	b, a := &c.Rounds[before], &c.Rounds[after]
	var out comparison
	if (b.EngineRPM == nil) != (a.EngineRPM == nil) || b.EngineRPM == nil && b.Label != a.Label {
		out.differs = append(out.differs, say.Of("proof.condition.rpm"))
	} else {
		out.number("rpm", b.EngineRPM, a.EngineRPM, rpmLimit(b.EngineRPM))
	}
	out.number("speed", standing(b.SpeedKmh), standing(a.SpeedKmh), kmhLike)
	out.number("minutes", warmth(b.MinutesSinceStart), warmth(a.MinutesSinceStart), minLike)
	if b.MinutesSinceStart != nil && a.MinutesSinceStart != nil { // of two warm rounds the one that ran as long is more alike
		out.distance += math.Abs(*b.MinutesSinceStart-*a.MinutesSinceStart) / soakMin
	}
	out.number("air", float(c.Ambient(before)), float(c.Ambient(after)), airLikeK)
	_, knownB := b.Heater.Blower()
	_, knownA := a.Heater.Blower()
	out.word("heater", b.Heater == a.Heater, knownB && knownA)
	if !fanMayDiffer(c) {
		out.word("fan", b.Fan == a.Fan, known(b.Fan) && known(a.Fan))
	}
	return out
}

func rpmLimit(rpm *float64) float64 {
	if rpm == nil {
		return rpmLike
	}
	return max(rpmLike, *rpm/rpmPart)
}

// standing takes a manoeuvre in the yard for standing.
func standing(kmh *float64) *float64 {
	if kmh == nil || *kmh > evidence.StandingKmh {
		return kmh
	}
	zero := 0.0
	return &zero
}

// warmth is the minutes from a cold start as far as they tell of warmth.
func warmth(minutes *float64) *float64 {
	if minutes == nil {
		return nil
	}
	m := min(*minutes, warmMin)
	return &m
}

// fanMayDiffer reports whether the fan's state is what was repaired, or says
// little since a belt turns it.
func fanMayDiffer(c *cases.Case) bool {
	switch c.Verdict.Cause {
	case "fan-not-running", "fan-always-running":
		return true
	}
	return c.Loop.Fan.ByBelt()
}

func known(f cases.FanState) bool { return f == cases.FanOn || f == cases.FanOff }

func float[T ~float64](v *T) *float64 {
	if v == nil {
		return nil
	}
	f := float64(*v)
	return &f
}
