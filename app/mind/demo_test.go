package mind_test

import (
	"context"
	"testing"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
)

// Whoever opens the demo first reads papers on which the repaired fault is gone: the proof says so of every repair there.
func TestTheDemosRepairsAreProved(t *testing.T) {
	bundles, err := library.DemoCases()
	if err != nil {
		t.Fatal(err)
	}
	proved := 0
	for _, b := range bundles {
		if !b.Case.HasStage(cases.AfterRepair) {
			continue
		}
		m, err := mind.New()
		if err != nil {
			t.Fatal(err)
		}
		m.Crowds.Draws = 20
		made, err := m.Material(context.Background(), b)
		if err != nil {
			t.Fatal(err)
		}
		if made.Proof.Verdict != proof.Fixed {
			t.Errorf("%s: %s, the loop is well by %.2f", b.Case.Title, made.Proof.Verdict, made.Proof.Healthy)
		}
		proved++
	}
	if proved < 10 {
		t.Errorf("%d demo cases are measured after a repair; want ten and more", proved)
	}
}
