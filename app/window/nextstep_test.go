package window

import (
	"testing"

	"loopbook/cases"
)

// After the verdict come what confirmed it, the repair and the proof (the job's own
// order); a healthy loop has nothing to repair.
func TestWhatFollowsAVerdict(t *testing.T) {
	part := cases.Repair{Parts: []cases.Part{{Name: "radiator"}}}
	for _, tt := range []struct {
		c    cases.Case
		want int
		says bool
	}{
		{cases.Case{}, causesTab, false},
		{cases.Case{Repair: part}, causesTab, false},
		{cases.Case{Verdict: cases.Verdict{Cause: cases.Healthy}}, verdictTab, true},
		{cases.Case{Verdict: cases.Verdict{Cause: "pump-weak"}}, verdictTab, true},
		{cases.Case{Verdict: cases.Verdict{Cause: "pump-weak", ConfirmedBy: cases.ByHoseMap}}, repairTab, true},
		{cases.Case{Verdict: cases.Verdict{Cause: "pump-weak", ConfirmedBy: cases.ByHoseMap}, Repair: part}, proofTab, true},
	} {
		next, tab := nextStep(&tt.c)
		if tab != tt.want || (next.Title != "") != tt.says {
			t.Errorf("verdict %+v, %d parts: tab %d, %q; want tab %d", tt.c.Verdict, len(tt.c.Repair.Parts), tab, next.Title, tt.want)
		}
	}
}
