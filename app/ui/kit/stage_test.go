package kit_test

import (
	"testing"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// What is begun once a repair is noted, or once something was measured after it, is of after it.
func TestStageNow(t *testing.T) {
	repaired := cases.Case{Verdict: cases.Verdict{Cause: "thermostat-stuck-open"}, Repair: cases.Repair{Parts: []cases.Part{{Name: "thermostat"}}}}
	walked := cases.Case{Rounds: []cases.Round{{Stage: cases.BeforeRepair}, {Stage: cases.AfterRepair}}}
	open := cases.Case{Rounds: []cases.Round{{Stage: cases.BeforeRepair}}, Verdict: repaired.Verdict}
	for name, tt := range map[string]struct {
		c    cases.Case
		want cases.Stage
	}{"repair noted": {repaired, cases.AfterRepair}, "walked after it": {walked, cases.AfterRepair}, "only judged": {open, cases.BeforeRepair}} {
		if got := kit.StageNow(&tt.c); got != tt.want {
			t.Errorf("%s: %q, want %q", name, got, tt.want)
		}
	}
}
