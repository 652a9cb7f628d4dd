package diagnosis

import (
	"loopbook/cases"
	"loopbook/diagram"
)

// The heater's flow is felt at the two hoses that the hose map reads. Where they were read, the check says the same
// once more: it weighs with a part of its power, and is worth its minutes only while a shut valve, which has two
// sides of its own, is likely enough to be named (both judgement).
const (
	feltAgain = 1. / 3
	valveFrom = 0.1
)

// heaterRead reports whether a round of the stage has both hoses of the heater, from a warm engine with heat asked for.
func (p *Plan) heaterRead(c *cases.Case) bool {
	for i := range c.Rounds {
		r := &c.Rounds[i]
		asked := r.Heater == cases.HeaterFull || r.Heater == cases.HeaterHalf
		if p.Stage.Holds(r.Stage) && asked && !p.stillCold(r) && shown(r, diagram.HeaterIn) && shown(r, diagram.HeaterOut) {
			return true
		}
	}
	return false
}

func shown(r *cases.Round, p diagram.Point) bool {
	at := r.Reading(p)
	return at != nil && at.ShownC != nil
}

// feltBefore reports whether a check would only feel again what was read.
func (s *sheet) feltBefore(kind cases.TestKind) bool {
	return kind == cases.HeaterTest && s.chance[indexOf("heater-valve-shut")] < valveFrom && s.plan.heaterRead(s.c)
}
