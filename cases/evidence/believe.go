package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// claim is a temperature that a case states of its coolant or its thermostat.
type claim struct {
	at    **diagram.Celsius
	where say.Text
	round int
}

func (cl claim) bad() bool { return *cl.at != nil && !cases.CanBeCoolant(**cl.at) }

// claims are all of them but the logs', whose impossible steps are told with the
// warm-up.
func claims(c *cases.Case) []claim {
	out := []claim{
		{&c.Loop.ThermostatOpensC, say.Of("claim.opens"), WholeCase},
		{&c.Loop.ThermostatFullC, say.Of("claim.full"), WholeCase},
	}
	for i := range c.Codes {
		code := &c.Codes[i]
		out = append(out, claim{&code.FreezeFrame.EctC, say.Of("claim.frame", cases.InLetters(code.Code)), WholeCase})
	}
	for i := range c.Rounds {
		r := &c.Rounds[i]
		out = append(out, claim{&r.EctC, say.Of("claim.scan-tool", i+1), i})
		for j := range r.Readings {
			if at := &r.Readings[j]; !at.Point.Air() {
				out = append(out, claim{&at.ShownC, say.Of("claim.reading", say.Place(at.Point), i+1), i})
			}
		}
	}
	return out
}

// Believed is the case without the temperatures that no coolant of an engine can
// have; a case that has none is given back as it is. The flags name each.
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
		if !cl.bad() {
			continue
		}
		f := ofCase("not-coolant", Look, say.Of("flag.not-coolant", cl.where, **cl.at),
			say.Of("because.not-coolant", cases.CoolantLeastC, cases.CoolantMostC))
		f.Round = cl.round
		out = append(out, f)
		*cl.at = nil
	}
	return &held, out
}
