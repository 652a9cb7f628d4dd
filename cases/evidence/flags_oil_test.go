package evidence_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/evidence"
)

// An engine with milky oil stays off until that is settled (common practice, no source); what is measured
// after a repair shows that it was,
// and so does the verdict that the loop is healthy: cream under the cap of a car of short ways is no coolant.
func TestMilkyOilKeepsTheEngineOff(t *testing.T) {
	milky := cases.Complaint{Symptoms: []cases.Symptom{"oil-milky"}}
	for name, tt := range map[string]struct {
		c    cases.Case
		want bool
	}{
		"milky":    {cases.Case{Complaint: milky}, true},
		"measured": {cases.Case{Complaint: milky, Rounds: []cases.Round{{Stage: cases.BeforeRepair}}}, true},
		"repaired": {cases.Case{Complaint: milky, Rounds: []cases.Round{{Stage: cases.AfterRepair}}}, false},
		"at fault": {cases.Case{Complaint: milky, Verdict: cases.Verdict{Cause: "fan-not-running"}}, true},
		"healthy":  {cases.Case{Complaint: milky, Verdict: cases.Verdict{Cause: cases.Healthy}}, false},
		"clear":    {cases.Case{}, false},
	} {
		f := find(analyst(t).Analyse(&tt.c), "oil-milky")
		if (f != nil) != tt.want || f != nil && (f.Severity != evidence.Act || len(f.Because) == 0) {
			t.Errorf("%s: %+v, want it: %v", name, f, tt.want)
		}
	}
}
