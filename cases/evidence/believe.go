package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// claim is a temperature that a case states of its coolant or its thermostat, or of
// the air outside.
type claim struct {
	at    **diagram.Celsius
	where say.Text
	round int
	air   bool
}

// airMostC is more than the air outside was ever found to have: 56.7 °C (published, the World Meteorological
// Organization's archive of extremes). Degrees Fahrenheit are typed so.
const airMostC diagram.Celsius = 60

func (cl claim) bad() bool {
	switch {
	case *cl.at == nil:
		return false
	case cl.air:
		return **cl.at > airMostC
	}
	return !cases.CanBeCoolant(**cl.at)
}

// flag names a claim that is bad.
func (cl claim) flag() Flag {
	f := ofCase("not-coolant", Look, say.Of("flag.not-coolant", cl.where, **cl.at),
		say.Of("because.not-coolant", cases.CoolantLeastC, cases.CoolantMostC))
	if cl.air {
		f = ofCase("not-air", Look, say.Of("flag.not-air", cl.where, **cl.at), say.Of("because.not-air", diagram.Celsius(56.7)))
	}
	f.Round = cl.round
	return f
}

// claims are all of them but the logs', whose impossible steps are told with the
// warm-up.
func claims(c *cases.Case) []claim {
	out := []claim{
		{&c.Loop.ThermostatOpensC, say.Of("claim.opens"), WholeCase, false},
		{&c.Loop.ThermostatFullC, say.Of("claim.full"), WholeCase, false},
		{&c.Site.AmbientC, say.Of("claim.outside"), WholeCase, true},
	}
	for i := range c.Codes {
		code := &c.Codes[i]
		out = append(out, claim{&code.FreezeFrame.EctC, say.Of("claim.frame", cases.InLetters(code.Code)), WholeCase, false})
	}
	for i := range c.Rounds {
		r := &c.Rounds[i]
		out = append(out, claim{&r.EctC, say.Of("claim.scan-tool", i+1), i, false}, claim{&r.AmbientC, say.Of("claim.outside-round", i+1), i, true})
		for j := range r.Readings {
			if at := &r.Readings[j]; !at.Point.Air() {
				out = append(out, claim{&at.ShownC, say.Of("claim.reading", say.Place(at.Point), i+1), i, false})
			}
		}
	}
	return out
}

// Believed is the case without the temperatures that no coolant of an engine, or no
// air, can have; a case that has none is given back as it is. The flags name each.
func Believed(c *cases.Case) (*cases.Case, []Flag) {
	if !slices.ContainsFunc(claims(c), claim.bad) {
		return c, nil
	}
	held := *c
	held.Codes, held.Rounds = slices.Clone(c.Codes), slices.Clone(c.Rounds)
	for i := range held.Rounds {
		held.Rounds[i].Readings = slices.Clone(held.Rounds[i].Readings)
	}
	var out []Flag
	for _, cl := range claims(&held) {
		if cl.bad() {
			out = append(out, cl.flag())
			*cl.at = nil
		}
	}
	return &held, out
}
