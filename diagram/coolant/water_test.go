package coolant_test

import (
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/published"
)

// TestSaturation: IAPWS R7-97, tables 35 and 36, to all nine digits; the other
// rows are another program's and end sooner.
func TestSaturation(t *testing.T) {
	for _, r := range published.Rows(t, "reference/water_saturation.csv") {
		kelvin, kPa := diagram.Kelvin(r.Number(t, "T_K")), diagram.KPaAbs(r.Number(t, "p_abs_Pa")/1000)
		table := r["status"] != "computed"
		switch r["quantity"] {
		case "saturation_pressure":
			got := coolant.SaturationKPa(kelvin)
			limit := 1e-6
			if table {
				limit = 1e-8
			}
			if rel := math.Abs(float64(got/kPa) - 1); !(rel <= limit) {
				t.Errorf("SaturationKPa(%v) = %v, want %v (%s)", kelvin, got, kPa, r["source"])
			}
		case "saturation_temperature":
			got := coolant.SaturationK(kPa)
			limit := 1e-4
			if table {
				limit = 1e-6
			}
			if off := math.Abs(float64(got - kelvin)); !(off <= limit) {
				t.Errorf("SaturationK(%v) = %v, want %v (%s)", kPa, got, kelvin, r["source"])
			}
		default:
			t.Errorf("unknown quantity %q", r["quantity"])
		}
	}
}

func TestSaturationRoundTrip(t *testing.T) {
	for k := diagram.Kelvin(273.15); k < 640; k += 7.3 {
		if back := coolant.SaturationK(coolant.SaturationKPa(k)); math.Abs(float64(back-k)) > 1e-6 {
			t.Errorf("SaturationK(SaturationKPa(%v)) = %v", k, back)
		}
	}
}
