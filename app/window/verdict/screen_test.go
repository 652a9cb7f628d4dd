package verdict

import (
	"testing"

	"loopbook/app/desk"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

// A verdict that the case holds less for than for another cause is told so: who takes it may know
// better, but doesn't overlook it.
func TestALikelierCauseIsToldBesideTheVerdict(t *testing.T) {
	var a desk.Answer
	a.Thought.Ranking.Causes = []diagnosis.Ranked{{Cause: "pump-weak", Probability: 0.84}, {Cause: cases.Healthy, Probability: 0.04}}
	for cause, want := range map[cases.Cause]string{
		"pump-weak":   "By what the case holds from before the repair: 84 %",
		cases.Healthy: "By what the case holds from before the repair: 4 %. It holds more for coolant pump weak: 84 %",
		"":            "",
	} {
		if got := odd(a, cause); got != want {
			t.Errorf("%q: %q, want %q", cause, got, want)
		}
	}
}

// A log is called by its name where it has one, and one that was written down as the papers call it.
func TestALogIsCalledByItsName(t *testing.T) {
	for name, want := range map[string]string{"": "Warm-up: no knee seen.", "run 2": "Warm-up run 2: no knee seen.", cases.HandLog: "Warm-up written down: no knee seen."} {
		if got := logLine(&desk.Desk{}, name, "no knee seen"); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
