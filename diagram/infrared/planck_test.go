package infrared_test

import (
	"math"
	"strings"
	"testing"

	"loopbook/diagram/infrared"
	"loopbook/diagram/published"
)

// TestFraction: a textbook's table of blackbody functions, which has three
// misprints, and the series as another program sums it.
func TestFraction(t *testing.T) {
	for _, r := range published.Rows(t, "reference/radiation_fraction.csv") {
		at := r.Number(t, "lambda_T_um_K")
		got, want := infrared.Fraction(at), r.Number(t, "f_0_to_lambdaT_computed")
		if !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("fraction(%v) = %v, want %v (%s)", at, got, want, r["source"])
		}
		if r["f_0_to_lambdaT_published"] == "" || strings.Contains(r["status"], "table error") {
			continue
		}
		if want = r.Number(t, "f_0_to_lambdaT_published"); !(math.Abs(got-want) <= 6e-5) {
			t.Errorf("fraction(%v) = %v, printed %v (%s)", at, got, want, r["source"])
		}
	}
}

// TestRadiance: Planck's law by quadrature.
func TestRadiance(t *testing.T) {
	for _, r := range published.Rows(t, "reference/radiation_band.csv") {
		kelvin, want := r.Number(t, "T_K"), r.Number(t, "band_radiance_8_14um_W_m2sr")
		got := infrared.Radiance(kelvin)
		if !(math.Abs(got/want-1) <= 1e-6) {
			t.Errorf("radiance(%v) = %v, want %v (%s)", kelvin, got, want, r["source"])
		}
		share := got * math.Pi / r.Number(t, "sigma_T4_W_m2")
		if want := r.Number(t, "band_fraction_of_total"); !(math.Abs(share-want) <= 1e-6) {
			t.Errorf("share of the band at %v K = %v, want %v (%s)", kelvin, share, want, r["source"])
		}
		exponent := infrared.Slope(kelvin, got) * kelvin / got
		if want := r.Number(t, "local_exponent_dlnL_dlnT"); !(math.Abs(exponent-want) <= 1e-3) {
			t.Errorf("d ln L/d ln T at %v K = %v, want %v (%s)", kelvin, exponent, want, r["source"])
		}
		if back := infrared.Temperature(want); !(math.Abs(back-kelvin) <= 1e-4) {
			t.Errorf("temperature(%v) = %v, want %v", want, back, kelvin)
		}
	}
}

func TestTemperatureReturns(t *testing.T) {
	for kelvin := 150.0; kelvin < 900; kelvin += 0.7 {
		if back := infrared.Temperature(infrared.Radiance(kelvin)); !(math.Abs(back-kelvin) <= 1e-6) {
			t.Errorf("temperature(radiance(%v)) = %v", kelvin, back)
		}
	}
	for _, l := range []float64{0, -1, 1e9, math.NaN(), math.Inf(1)} {
		if got := infrared.Temperature(l); !math.IsNaN(got) {
			t.Errorf("temperature(%v) = %v, want NaN", l, got)
		}
	}
}
