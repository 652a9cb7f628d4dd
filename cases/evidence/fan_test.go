package evidence_test

import (
	"testing"

	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A fan starts by 98 °C (FN1, published, V23) and no less than 10 K over a hotter thermostat's rating (common
// practice); F07 of testdata/trade/signatures.csv lets it be 5 K late.
func TestAFanIsDueByTheRating(t *testing.T) {
	for opens, want := range map[diagram.Celsius]diagram.Celsius{76: 103, 88: 103, 95: 110, 105: 120} {
		if got := evidence.FanDueC(opens); got != want {
			t.Errorf("with a thermostat of %g °C a fan is due by %g °C, want %g", opens, got, want)
		}
	}
}
