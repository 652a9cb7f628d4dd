package coolant_test

import (
	"errors"
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
			got, err := coolant.SaturationPressure(kelvin)
			limit := 1e-6
			if table {
				limit = 1e-8
			}
			if rel := math.Abs(float64(got/kPa) - 1); err != nil || !(rel <= limit) {
				t.Errorf("SaturationPressure(%v) = %v, %v, want %v (%s)", kelvin, got, err, kPa, r["source"])
			}
		case "saturation_temperature":
			got, err := coolant.SaturationTemperature(kPa)
			limit := 1e-4
			if table {
				limit = 1e-6
			}
			if off := math.Abs(float64(got - kelvin)); err != nil || !(off <= limit) {
				t.Errorf("SaturationTemperature(%v) = %v, %v, want %v (%s)", kPa, got, err, kelvin, r["source"])
			}
		default:
			t.Errorf("unknown quantity %q", r["quantity"])
		}
	}
}

func TestSaturationRange(t *testing.T) {
	for _, k := range []diagram.Kelvin{0, 273.14, 647.2, diagram.Kelvin(math.NaN()), diagram.Kelvin(math.Inf(1))} {
		if got, err := coolant.SaturationPressure(k); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("SaturationPressure(%v) = %v, %v, want ErrRange", k, got, err)
		}
	}
	for _, p := range []diagram.KPaAbs{-1, 0, 0.6, 22065, diagram.KPaAbs(math.NaN())} {
		if got, err := coolant.SaturationTemperature(p); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("SaturationTemperature(%v) = %v, %v, want ErrRange", p, got, err)
		}
	}
}

func TestSaturationRoundTrip(t *testing.T) {
	for k := diagram.Kelvin(273.15); k < 640; k += 7.3 {
		p, err := coolant.SaturationPressure(k)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := coolant.SaturationTemperature(p); err != nil || math.Abs(float64(back-k)) > 1e-6 {
			t.Errorf("SaturationTemperature(SaturationPressure(%v)) = %v, %v", k, back, err)
		}
	}
}
