package diagnosis

import (
	"loopbook/cases"
	"loopbook/diagram"
)

// valveFrom is the chance of a shut heater valve from which the heater's flow is worth feeling though both its hoses
// were read: the valve has two sides of its own (judgement).
const valveFrom = 0.1

// heaterRead reports whether a round of the stage has both hoses of the heater, from a warm engine with heat asked for.
func (p *Plan) heaterRead(c *cases.Case) bool {
	for i := range c.Rounds {
		r := &c.Rounds[i]
		if p.Stage.Holds(r.Stage) && r.Heater.Asked() && !p.stillCold(r) && shown(r, diagram.HeaterIn) && shown(r, diagram.HeaterOut) {
			return true
		}
	}
	return false
}

func shown(r *cases.Round, p diagram.Point) bool {
	at := r.Reading(p)
	return at != nil && at.ShownC != nil
}

// feltBefore reports whether a check would only feel again what was read: the heater's flow is felt at the two hoses
// that the hose map reads.
func (s *sheet) feltBefore(kind cases.TestKind) bool {
	return kind == cases.HeaterTest && s.chance[indexOf("heater-valve-shut")] < valveFrom && s.plan.heaterRead(s.c)
}
