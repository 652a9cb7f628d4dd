package causes

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
		want Step
		says bool
	}{
		{cases.Case{}, None, false},
		{cases.Case{Repair: part}, None, false},
		{cases.Case{Verdict: cases.Verdict{Cause: cases.Healthy}}, Verdict, true},
		{cases.Case{Verdict: cases.Verdict{Cause: "pump-weak"}}, Verdict, true},
		{cases.Case{Verdict: cases.Verdict{Cause: "pump-weak", ConfirmedBy: cases.ByHoseMap}}, Repair, true},
		{cases.Case{Verdict: cases.Verdict{Cause: "pump-weak", ConfirmedBy: cases.ByHoseMap}, Repair: part}, Proof, true},
	} {
		next, step := nextStep(&tt.c)
		if step != tt.want || (next.Title != "") != tt.says {
			t.Errorf("verdict %+v, %d parts: step %d, %q; want %d", tt.c.Verdict, len(tt.c.Repair.Parts), step, next.Title, tt.want)
		}
	}
}
