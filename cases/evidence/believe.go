package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// claim is a value that a case states and that can be a slip of the pen.
type claim struct {
	bad   bool
	id    string // of the flag that names it
	where say.Text
	round int
	value any
	why   say.Text
	drop  func()
}

// stated is what stands at a place, bad where it is something that can't be.
func stated[T any](at **T, can func(T) bool, id string, where say.Text, round int, why say.Text) claim {
	if *at == nil {
		return claim{}
	}
	return claim{!can(**at), id, where, round, **at, why, func() { *at = nil }}
}

func coolantAt(at **diagram.Celsius, where say.Text, round int) claim {
	return stated(at, cases.CanBeCoolant, "not-coolant", where, round, say.Of("because.not-coolant", cases.CoolantLeastC, cases.CoolantMostC))
}

// airMostC is more than the air outside was ever found to have: 56.7 °C (published, the World Meteorological
// Organization's archive of extremes). Degrees Fahrenheit are typed so.
const airMostC diagram.Celsius = 60

func airAt(at **diagram.Celsius, where say.Text, round int) claim {
	can := func(c diagram.Celsius) bool { return c <= airMostC }
	return stated(at, can, "not-air", where, round, say.Of("because.not-air", diagram.Celsius(56.7)))
}

// What an engine's thermostat can be marked with, in the widest sense: the coldest is one of 50 °C (TH3 of
// testdata/trade/numbers.csv, published, V4), the hottest a judgement. 31 °C is a mark of 88 that was taken for degrees Fahrenheit.
const (
	markLeastC diagram.Celsius = 50
	markMostC  diagram.Celsius = 130
)

func canBeMark(c diagram.Celsius) bool { return c >= markLeastC && c <= markMostC }

func markAt(at **diagram.Celsius, where say.Text) claim {
	return stated(at, canBeMark, "not-mark", where, WholeCase, say.Of("because.not-mark", markLeastC, markMostC))
}

// By how much a thermostat is fully open over where it opens, in the widest sense: 6 to 15 K by TH2 (published).
const (
	spanLeastK diagram.DeltaK = 2
	spanMostK  diagram.DeltaK = 40
)

// fullAt is where a thermostat that opens there is fully open by its mark.
func fullAt(at **diagram.Celsius, opens *diagram.Celsius, where say.Text) claim {
	cl := markAt(at, where)
	if cl.bad || *at == nil || opens == nil || !canBeMark(*opens) {
		return cl
	}
	can := func(c diagram.Celsius) bool { span := c.Minus(*opens); return span >= spanLeastK && span <= spanMostK }
	return stated(at, can, "not-full", where, WholeCase, say.Of("because.not-full", *opens, diagram.DeltaK(6), diagram.DeltaK(15)))
}

func capAt(at **diagram.KPa, where say.Text) claim {
	return stated(at, cases.CanBeCap, "not-cap", where, WholeCase, say.Of("because.not-cap", cases.CapLeastKPa, cases.CapMostKPa))
}

// runs is the engine's speed in a round. One that stands warm moves no coolant, and its fan may rest with the key off
// (common practice), so neither is used. One that stands cold is looked at before its start, as a sensor is.
func runs(r *cases.Round, round int) claim {
	can := func(rpm float64) bool { return rpm > 0 || !warm(r) }
	cl := stated(&r.EngineRPM, can, "engine-stands", say.Of("claim.round", round+1), round, say.Of("because.engine-stands"))
	cl.drop = func() { r.EngineRPM, r.Fan = nil, "" }
	return cl
}

// warm reports whether the sensor or the gun found an engine warm.
func warm(r *cases.Round) bool {
	is := func(c *diagram.Celsius) bool { return c != nil && *c >= cases.OpenBelowC }
	return is(r.EctC) || slices.ContainsFunc(r.Readings, func(at cases.Reading) bool { return !at.Point.Air() && is(at.ShownC) })
}

// flag names a claim that is bad.
func (cl claim) flag() Flag {
	f := ofCase(cl.id, Look, say.Of("flag."+cl.id, cl.where, cl.value), cl.why)
	f.Round = cl.round
	return f
}

// claims are all that the case states but its logs', whose impossible steps are told with the
// warm-up.
func claims(c *cases.Case) []claim {
	out := []claim{
		markAt(&c.Loop.ThermostatOpensC, say.Of("claim.opens")),
		fullAt(&c.Loop.ThermostatFullC, c.Loop.ThermostatOpensC, say.Of("claim.full")),
		capAt(&c.Loop.CapKPa, say.Of("claim.cap")),
		airAt(&c.Site.AmbientC, say.Of("claim.outside"), WholeCase),
	}
	for i := range c.Codes {
		code := &c.Codes[i]
		out = append(out, coolantAt(&code.FreezeFrame.EctC, say.Of("claim.frame", cases.InLetters(code.Code)), WholeCase))
	}
	for i := range c.Tests {
		if t := &c.Tests[i]; t.Kind == cases.CapTest {
			out = append(out, capAt(&t.RatedKPa, say.Of("claim.cap-test")))
		}
	}
	for i := range c.Rounds {
		r := &c.Rounds[i]
		out = append(out, runs(r, i),
			coolantAt(&r.EctC, say.Of("claim.scan-tool", i+1), i), airAt(&r.AmbientC, say.Of("claim.outside-round", i+1), i))
		for j := range r.Readings {
			if at := &r.Readings[j]; !at.Point.Air() {
				out = append(out, coolantAt(&at.ShownC, say.Of("claim.reading", say.Place(at.Point), i+1), i))
			}
		}
	}
	return out
}

// Believed is the case without what can only be a slip: temperatures that no coolant of an
// engine, no air and no thermostat's mark can have, pressures that no cap is marked with, the
// speed and the fan of an engine that stands. A case that has none is given back as it is. The
// flags name each.
func Believed(c *cases.Case) (*cases.Case, []Flag) {
	if !slices.ContainsFunc(claims(c), func(cl claim) bool { return cl.bad }) {
		return c, nil
	}
	held := *c
	held.Codes, held.Tests, held.Rounds = slices.Clone(c.Codes), slices.Clone(c.Tests), slices.Clone(c.Rounds)
	for i := range held.Rounds {
		held.Rounds[i].Readings = slices.Clone(held.Rounds[i].Readings)
	}
	var out []Flag
	for _, cl := range claims(&held) {
		if cl.bad {
			out = append(out, cl.flag())
			cl.drop()
		}
	}
	return &held, out
}
