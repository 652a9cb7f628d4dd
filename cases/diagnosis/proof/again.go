package proof

import (
	"slices"

	"loopbook/cases"
)

// RepairAgain turns a case whose repair didn't help to the next one: what was measured until now, after the first too,
// is of the car as it came to that. The cause is open again, also where it is the likeliest still: its repair didn't help,
// and with it named what is measured next would count as after a repair that is still to come. The parts that were put in
// stay, and so does what was found.
func (p *Proof) RepairAgain(c *cases.Case) {
	for i := range c.Rounds {
		c.Rounds[i].Stage = cases.BeforeRepair
	}
	for i := range c.Logs {
		c.Logs[i].Stage = cases.BeforeRepair
	}
	for i := range c.Tests {
		c.Tests[i].Stage = cases.BeforeRepair
	}
	for _, code := range p.Codes.After {
		if !slices.Contains(p.Codes.Before, code) {
			c.Codes = append(c.Codes, cases.Code{Code: code, State: cases.CodeStates()[0]})
		}
	}
	c.Repair.CodesAfter = nil
	c.Verdict.Cause, c.Verdict.ConfirmedBy = "", ""
}
