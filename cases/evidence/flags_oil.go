package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// MilkyOil reports whether an engine is to stay off since its oil may hold coolant, until something was
// measured after a repair or the loop was found healthy: oil with coolant in it carries no bearing (common practice,
// no source).
func MilkyOil(c *cases.Case) bool {
	return slices.Contains(c.Complaint.Symptoms, "oil-milky") && !c.HasStage(cases.AfterRepair) && c.Verdict.Cause != cases.Healthy
}

// milkyOil says so, since most checks and walks ask for a running engine.
func milkyOil(c *cases.Case) []Flag {
	if !MilkyOil(c) {
		return nil
	}
	return []Flag{ofCase("oil-milky", Act, say.Of("flag.oil-milky"), say.Of("because.oil-milky"), say.Of("because.oil-cream"))}
}
