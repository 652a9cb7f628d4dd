package kit

import "loopbook/cases"

// Repaired reports whether something is noted of a repair after its verdict: what
// is measured from then on proves it.
func Repaired(c *cases.Case) bool {
	r := &c.Repair
	return c.Verdict.Cause != "" && c.Verdict.Cause != cases.Healthy && (len(r.Parts) > 0 || r.LabourHours != nil || len(r.StepsDone) > 0)
}

// StageNow is the side of the repair that is measured on next: after it where one is noted, or where
// anything was measured after it.
func StageNow(c *cases.Case) cases.Stage {
	if Repaired(c) || c.HasStage(cases.AfterRepair) {
		return cases.AfterRepair
	}
	return cases.BeforeRepair
}
