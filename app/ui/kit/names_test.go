package kit_test

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

func TestARoundWithoutALabelHasItsNumber(t *testing.T) {
	test.NewTempApp(t)
	if got := kit.RoundName(cases.Round{Label: "after the road"}, 1); got != "after the road" {
		t.Errorf("a labelled round is called %q", got)
	}
	if got := kit.RoundName(cases.Round{}, 1); got != "Round 2" {
		t.Errorf("the second round is called %q", got)
	}
}

// Nobody is told that anything is sure or out of the question.
func TestNoChanceIsSure(t *testing.T) {
	for p, want := range map[float64]string{0: "under 1 %", 0.004: "under 1 %", 0.01: "1 %", 0.5: "50 %", 0.99: "99 %", 0.994: "over 99 %", 1: "over 99 %"} {
		if got := kit.Chance(p); got != want {
			t.Errorf("Chance(%g) = %q, want %q", p, got, want)
		}
	}
}
