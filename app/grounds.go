package main

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
)

// grounds are what a stage of a case is judged by, as far as it is simulated. They
// are found out once for an edit: a log may be long.
type grounds struct {
	plan  diagnosis.Plan      // of the stage's rounds
	logs  []diagnosis.LogPlan // those that are weighed
	known bool                // the layout: without it nothing is simulated
}

// groundsOf are the grounds of a stage; found is of the case as it is.
func groundsOf(c *cases.Case, found evidence.Findings, stage cases.Stage) grounds {
	p, ok := diagnosis.PlanFor(c, stage)
	if !ok {
		return grounds{plan: p}
	}
	return grounds{p, diagnosis.LogPlans(c, found, stage), true}
}

// plans are all that is simulated: the rounds' crowd first, then the logs'.
func (g grounds) plans() []diagnosis.Plan {
	if !g.known {
		return nil
	}
	out := []diagnosis.Plan{g.plan}
	for _, l := range g.logs {
		out = append(out, l.Plan)
	}
	return out
}

// otherPlan is the plan for the rounds of the other stage than the one that causes
// are asked of: healthy cars, for its ranges. It is false where there are no such
// rounds, or no layout.
func otherPlan(c *cases.Case, asked cases.Stage) (diagnosis.Plan, bool) {
	for i := range c.Rounds {
		if stage := diagnosis.StageOfRound(c, i); stage != asked {
			p, ok := diagnosis.PlanFor(c, stage)
			return p.Healthy(), ok
		}
	}
	return diagnosis.Plan{}, false
}
