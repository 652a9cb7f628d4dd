package coolant_test

import (
	"errors"
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/published"
)

// TestAtmosphere: US Standard Atmosphere 1976. The rows of geometric altitude
// go through its equation 18, with the radius 6 356 766 m.
func TestAtmosphere(t *testing.T) {
	for _, r := range published.Rows(t, "reference/standard_atmosphere.csv") {
		h, want := r.Number(t, "altitude_m"), r.Number(t, "p_Pa")/1000
		if r["altitude_kind"] == "geometric" {
			h = 6356766 * h / (6356766 + h)
		}
		limit := 1e-5
		if r["status"] != "computed" {
			limit = 6e-5 // five or six digits are printed
		}
		got, err := coolant.Atmosphere(diagram.Metre(h))
		if rel := math.Abs(float64(got)/want - 1); err != nil || !(rel <= limit) {
			t.Errorf("Atmosphere(%v) = %v, %v, want %v (%s)", h, got, err, want, r["source"])
		}
	}
}

func TestAtmosphereRange(t *testing.T) {
	for _, h := range []diagram.Metre{-501, 11001, diagram.Metre(math.NaN())} {
		if got, err := coolant.Atmosphere(h); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("Atmosphere(%v) = %v, %v, want ErrRange", h, got, err)
		}
	}
}
