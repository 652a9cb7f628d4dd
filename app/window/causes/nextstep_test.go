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

// Once something was measured after the repair the proof is no longer to come.
func TestAProofThatIsBegunIsNotStillToCome(t *testing.T) {
	c := cases.Case{Verdict: cases.Verdict{Cause: "pump-weak", ConfirmedBy: cases.ByHoseMap}, Repair: cases.Repair{Parts: []cases.Part{{Name: "pump"}}}}
	before, _ := nextStep(&c)
	c.Rounds = []cases.Round{{Stage: cases.AfterRepair}}
	after, step := nextStep(&c)
	if step != Proof || after.Title == before.Title || after.Text == before.Text {
		t.Errorf("with a round after the repair: step %d, %q, %q", step, after.Title, after.Text)
	}
}
