package mind

import (
	"fmt"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
)

// Grounds are what a stage of a case is judged by, as far as it is simulated. They
// are found out once for an edit: a log may be long.
type Grounds struct {
	Plan  diagnosis.Plan      // of the stage's rounds
	Logs  []diagnosis.LogPlan // those that are weighed
	Known bool                // the layout: without it nothing is simulated
}

// GroundsOf are the grounds of a stage; found is of the case as it is.
func GroundsOf(c *cases.Case, found evidence.Findings, stage cases.Stage) Grounds {
	p, ok := diagnosis.PlanFor(c, stage)
	if !ok {
		return Grounds{Plan: p}
	}
	return Grounds{p, diagnosis.LogPlans(c, found, stage), true}
}

// Plans are all that is simulated: the rounds' crowd first, then the logs'.
func (g Grounds) Plans() []diagnosis.Plan {
	if !g.Known {
		return nil
	}
	out := []diagnosis.Plan{g.Plan}
	for _, l := range g.Logs {
		out = append(out, l.Plan)
	}
	return out
}

// otherPlan is the plan for the rounds of the other stage than the one that causes
// are asked of: healthy cars, for its ranges. It is false where there are no such
// rounds, or no layout.
func otherPlan(c *cases.Case, asked cases.Stage) (diagnosis.Plan, bool) {
	for i := range c.Rounds {
		if stage := c.Rounds[i].Stage; !asked.Holds(stage) {
			p, ok := diagnosis.PlanFor(c, stage)
			return p.Healthy(), ok
		}
	}
	return diagnosis.Plan{}, false
}

// CrowdsKey names the crowds that Gather simulates for a case.
func CrowdsKey(c *cases.Case, g Grounds) string {
	plans := g.Plans()
	if p, ok := otherPlan(c, g.Plan.Stage); ok {
		plans = append(plans, p)
	}
	key := ""
	for _, p := range plans {
		key += fmt.Sprintf("%s %s\n", p.Stage, p.Setting.Key())
	}
	return key
}
