package trial_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/trial"
	"loopbook/diagram"
	"loopbook/diagram/published"
)

// A healthy car shows what the trade's numbers.csv and the healthy rows of
// signatures.csv call healthy, on most of the cars: the ranges are common
// practice, and the gun and the hoses err on top. DT3 is met least: a fully open
// thermostat with the fan off drops less than its 5 K, by the heat balance.
func TestHealthyCarsAreHealthy(t *testing.T) {
	list := trial.Cases(12, 6000, trial.Temperatures)
	conventional := func(r round) bool { return r.of.Loop.Layout != "heated-thermostat" }
	atRating := func(r round) bool { return over(-4)(r) && !over(7)(r) && warmDay(r) }
	full := func(r round) bool { return heaterFull(r) && over(-11)(r) }
	twenty := func(r round) bool { a := *r.of.Site.AmbientC; return full(r) && a > 15 && a < 25 }
	fanRuns := func(r round) bool { return r.Fan == cases.FanOn && conventional(r) && r.of.Loop.Fan == "electric" }
	minutes := func(r round) (float64, bool) {
		if r.MinutesSinceStart == nil {
			return 0, false
		}
		return *r.MinutesSinceStart, true
	}
	for _, tt := range []struct {
		row, condition string // of numbers.csv; F00i of signatures.csv
		v              value
		slack          float64 // beside the range: IR9's 3 K unless said
	}{
		{"DT2", "WIDLE", where(outletSide, where(atRating, across)), 3},
		{"F00i", "WIDLE", where(round.inlet, where(atRating, across)), 3},
		{"DT3", "W2500", where(atRating, across), 3},
		{"DT8", "COLD5", minus(round.ect, far), 3},
		{"DT10", "WIDLE", where(full, heaterDrop), 3},
		{"DT15", "WIDLE", minus(round.ect, engine), 3},
		{"HT1", "WIDLE", where(twenty, point(diagram.Vent)), 5}, // 20 °C is 15 to 25 here
		{"TH8", "WIDLE", where(conventional, where(atRating, minus(round.ect, round.rating))), 3},
		{"TH8", "road", where(conventional, minus(round.ect, round.rating)), 3},
		{"FN1", "HIDLE_FAN", where(fanRuns, round.ect), 5}, // FN2's off, and on where the rating is 92
		{"WU3", "WIDLE", where(atRating, minutes), 6},      // with the minutes that the round waits
	} {
		low, high := number(t, tt.row, tt.condition)
		n, share := within(list, cases.Healthy, tt.condition, tt.v, low-tt.slack, high+tt.slack)
		t.Logf("%s %s: %.0f %% of %d within %g to %g, %g beside", tt.row, tt.condition, 100*share, n, low, high, tt.slack)
		if n < 12 || share < 0.5 {
			t.Errorf("%s %s: %.0f %% of %d healthy rounds are within %g to %g, want most", tt.row, tt.condition, 100*share, n, low, high)
		}
	}
}

// number is the row's range.
func number(t *testing.T, id, condition string) (low, high float64) {
	t.Helper()
	if id == "F00i" {
		return signature(t, id, condition)
	}
	for _, r := range published.Rows(t, "trade/numbers.csv") {
		if r["id"] == id {
			return r.Number(t, "low"), r.Number(t, "high")
		}
	}
	t.Fatalf("numbers.csv has no row %s", id)
	return 0, 0
}
