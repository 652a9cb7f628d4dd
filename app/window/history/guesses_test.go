package history

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/experience"
)

// The history said that 100 % were claimed where the causes never say that anything is sure.
func TestWhatWasClaimedIsToldAsItWas(t *testing.T) {
	for p, want := range map[float64]string{0.998: "claimed over 99 %", 0.84: "claimed 84 %"} {
		if got := binLine(experience.Bin{N: 1, MeanP: p, Low: 0.8, High: 1, Where: []cases.Condition{{Field: cases.ByGuess}}}).Parts[0].Text; !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), want) {
			t.Errorf("%v: %q, want %q", p, got, want)
		}
	}
}
