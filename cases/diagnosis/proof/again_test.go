package proof_test

import (
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram/say"
)

// The round that showed that a first repair didn't help held the proof of the second down: a car that was well then was
// called not fixed for good.
func TestASecondRepairIsProvenByWhatWasMeasuredSince(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, stuckOpen()))
	c.Verdict = cases.Verdict{Cause: "radiator-restricted", ConfirmedBy: "core-scan", Note: "cold below"}
	c.Repair = cases.Repair{Parts: []cases.Part{{Name: "Radiator"}}, CodesAfter: []string{"P0128", "P0480"}}
	c.Codes = []cases.Code{{Code: "P0128"}}
	first := judge(t, c)
	if first.Verdict != proof.NotFixed {
		t.Fatal(first.Verdict)
	}
	first.RepairAgain(&c)
	if c.HasStage(cases.AfterRepair) || c.Verdict.Cause != "" || c.Verdict.ConfirmedBy != "" || c.Verdict.Note == "" || len(c.Repair.Parts) != 1 || len(c.Codes) != 2 || c.Codes[1].Code != "P0480" || c.Repair.CodesAfter != nil {
		t.Errorf("verdict %+v, repair %+v, codes %v", c.Verdict, c.Repair, c.Codes)
	}
	if p := judge(t, c); !slices.Equal(p.Again, []int{1}) {
		t.Errorf("two like rounds: to be walked again are %v, want the last", p.Again)
	}
	c.Verdict.Cause = "thermostat-stuck-open"
	c.Repair.CodesAfter = []string{cases.NoCodes}
	c.Rounds = append(c.Rounds, round(cases.AfterRepair, 800, 20, sound()))
	if p := judge(t, c); p.Verdict == proof.NotFixed || len(p.Pairs) != 1 || p.Pairs[0].After != 2 || len(p.Again) != 0 {
		t.Errorf("%s, %+v, again %v", p.Verdict, p.Pairs, p.Again)
	}
}

// A cause that is the likeliest still stayed named and confirmed: the next check was noted as done after the repair, and
// the causes sent to the proof of a repair that nobody had begun.
func TestTheNextRepairBeginsWithTheCauseOpen(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, stuckOpen()))
	c.Verdict = cases.Verdict{Cause: "thermostat-stuck-open", ConfirmedBy: cases.ByHoseMap}
	c.Repair.Parts = []cases.Part{{Name: "Thermostat"}}
	first := judge(t, c)
	first.Left = c.Verdict.Cause // as with the crowd of simulated cars
	if first.RepairAgain(&c); c.Verdict.Cause != "" || c.Verdict.ConfirmedBy != "" {
		t.Errorf("verdict %+v", c.Verdict)
	}
}

// While the cars are computed only what is to be done whatever they show is asked for: what came on top pushed the
// button of the check away from under the hand.
func TestWhatIsAskedForBeforeTheChancesAreThereStays(t *testing.T) {
	off := round(cases.AfterRepair, 800, 20, stuckOpen())
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), off)
	c.Codes = []cases.Code{{Code: "P0128"}}
	p := judge(t, c)
	p.Telling = "thermostat-bench"
	pending := p.Pending(&c)
	if asked := say.English().All(pending.Repeat); len(asked) != 1 || asked[0] != say.English().Say(say.Of("proof.repeat.codes")) || pending.Telling != "" || pending.Off != nil {
		t.Errorf("asked for are %v, and %q", asked, pending.Telling)
	}
}
