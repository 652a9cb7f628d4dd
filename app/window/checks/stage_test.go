package checks

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

// A thermostat that is tried in water after a repair that didn't help is the one that came with the car: noted as done
// after the repair it would hold the proof of the next one down.
func TestAPartTriedByItselfIsTheOldOne(t *testing.T) {
	c := cases.Case{Verdict: cases.Verdict{Cause: "radiator-restricted"}, Repair: cases.Repair{Parts: []cases.Part{{Name: "Radiator"}}}}
	for kind, want := range map[cases.TestKind]cases.Stage{cases.BenchTest: cases.BeforeRepair, cases.SensorTest: cases.BeforeRepair, "cap": cases.AfterRepair} {
		if got := stageNow(&c, kind); got != want {
			t.Errorf("%s is noted as %s, want %s", kind, got, want)
		}
	}
	c.Tests = []cases.Test{{Kind: cases.BenchTest, Stage: cases.BeforeRepair, RatedOpensC: casetest.P(diagram.Celsius(88))}}
	if got := stageNow(&c, cases.BenchTest); got != cases.AfterRepair {
		t.Errorf("a second one is noted as %s", got)
	}
	if got := stageNow(&cases.Case{}, cases.BenchTest); got != cases.BeforeRepair {
		t.Errorf("in a new case it is noted as %s", got)
	}
}
