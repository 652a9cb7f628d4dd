package infrared_test

import (
	"errors"
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/infrared"
	"loopbook/diagram/published"
)

// TestLargestDistance: the target twice the spot, IR6 in numbers.csv (source
// T12), on hoses and guns that are common; the rest is arithmetic.
func TestLargestDistance(t *testing.T) {
	for _, r := range published.Rows(t, "trade/numbers.csv") {
		if r["id"] != "IR6" {
			continue
		}
		times := r.Number(t, "typical")
		for _, ratio := range []float64{8, 12, 20} {
			got, err := infrared.LargestDistance(0.038, ratio)
			spot := float64(got) / ratio
			if err != nil || math.Abs(0.038/spot-times) > 1e-9 {
				t.Errorf("LargestDistance(38 mm, %v) = %v, %v: spot %v", ratio, got, err, spot)
			}
		}
		if got, _ := infrared.LargestDistance(0.038, 12); math.Abs(float64(got)-0.228) > 1e-12 {
			t.Errorf("12:1 on a 38 mm hose: %v, want 228 mm", got)
		}
		return
	}
	t.Error("IR6 not found")
}

func TestLargestDistanceRange(t *testing.T) {
	for _, tt := range []struct {
		target diagram.Metre
		ratio  float64
	}{{0, 12}, {-1, 12}, {0.04, 0}, {diagram.Metre(math.NaN()), 12}, {0.04, math.NaN()}} {
		if got, err := infrared.LargestDistance(tt.target, tt.ratio); !errors.Is(err, infrared.ErrRange) {
			t.Errorf("LargestDistance(%v, %v) = %v, %v, want ErrRange", tt.target, tt.ratio, got, err)
		}
	}
}
