package evidence_test

import (
	"testing"

	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A fan starts by 98 °C (FN1, published, V23) and no less than 10 K over a hotter thermostat's rating (common
// practice), and above what a heated thermostat lets an engine have at light load, 110 °C (TH6, published, T2): a fan that
// started below would never rest. F07 of testdata/trade/signatures.csv lets it be 5 K late.
func TestAFanIsDueByTheRating(t *testing.T) {
	for opens, want := range map[diagram.Celsius]diagram.Celsius{76: 103, 88: 103, 92: 107, 98: 115, 105: 120} {
		if got := evidence.FanDueC(opens); got != want {
			t.Errorf("with a thermostat of %g °C a fan is due by %g °C, want %g", opens, got, want)
		}
	}
}
