package checks

import (
	"testing"

	"loopbook/cases"
)

// A check that is begun once a repair is noted is of after it.
func TestACheckAfterTheRepairIsOfAfterIt(t *testing.T) {
	c := cases.Case{Verdict: cases.Verdict{Cause: "thermostat-stuck-open"}, Repair: cases.Repair{Parts: []cases.Part{{Name: "thermostat"}}}}
	if stage := StageNow(&c); stage != cases.AfterRepair {
		t.Errorf("a check is begun %q", stage)
	}
}
