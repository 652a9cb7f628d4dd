package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// milkyOil keeps an engine off whose oil may hold coolant, until something was measured after a repair: most
// checks and walks ask for a running engine, and oil with coolant in it carries no bearing (common practice,
// no source).
func milkyOil(c *cases.Case) []Flag {
	if !slices.Contains(c.Complaint.Symptoms, "oil-milky") || c.HasStage(cases.AfterRepair) {
		return nil
	}
	return []Flag{ofCase("oil-milky", Act, say.Of("flag.oil-milky"), say.Of("because.oil-milky"), say.Of("because.oil-cream"))}
}
