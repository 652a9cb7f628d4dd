package exchanger_test

import (
	"math"
	"strings"
	"testing"

	"loopbook/diagram/physics/exchanger"
	"loopbook/diagram/published"
)

func TestEffectivenessAsPublished(t *testing.T) {
	for _, row := range published.Rows(t, "reference/heat_exchanger.csv") {
		kind := row["arrangement"]
		if kind != "any_Cr_zero" && !strings.HasPrefix(kind, "cross_flow_both_unmixed") {
			continue // the table has other arrangements too
		}
		ntu, cr, want := row.Number(t, "NTU"), row.Number(t, "Cr"), row.Number(t, "effectiveness")
		digits := row["effectiveness"]
		tol := max(1e-6, 0.5*math.Pow10(strings.Index(digits, ".")+1-len(digits))) // half the last printed digit
		if closedForm := kind + row["status"]; strings.Contains(closedForm, "approx") {
			tol = 0.012 // what the closed form is off by from the series that we have
		}
		if got := exchanger.Effectiveness(ntu, cr); !(math.Abs(got-want) <= tol) {
			t.Errorf("Effectiveness(%g, %g) = %.8f, want %.8f (%s, %s)", ntu, cr, got, want, kind, row["source"])
		}
	}
}

// Textbook examples (heat_exchanger_worked.csv): exact rows to 1e-4, figures
// that the books read off a chart to 3 %.
func TestWorkedExamples(t *testing.T) {
	book := map[string]published.Row{}
	for _, row := range published.Rows(t, "reference/heat_exchanger_worked.csv") {
		book[row["case"]+"/"+row["quantity"]] = row
	}
	finned := func(is func(string) float64) float64 {
		return exchanger.Conductance(is("U_hot")*is("area"), is("m_hot")*is("cp_hot"), is("m_cold")*is("cp_cold")) *
			(is("T_hot_in") - is("T_cold_in"))
	}
	for _, tt := range []struct {
		row  string
		got  func(is func(string) float64) float64
		tol  float64
		want string
	}{
		{"incropera_11_3", func(is func(string) float64) float64 {
			return exchanger.Effectiveness(is("NTU_exact_series"), is("Cr"))
		}, 0.01, "effectiveness"}, // printed to two digits
		{"incropera_11_4", finned, 1e-4, "Q_exact"},
		{"incropera_11_4", finned, 0.03, "Q"},
		{"cengel_11_6", func(is func(string) float64) float64 {
			return exchanger.Conductance(is("U_inner")*is("area_inner"), is("C_water_computed"), is("C_air_computed")) *
				(is("T_water_in") - is("T_air_in"))
		}, 0.03, "Q"},
		{"cengel_11_6", func(is func(string) float64) float64 {
			return exchanger.Effectiveness(is("NTU_exact"), is("Cr_computed"))
		}, 1e-4, "effectiveness_computed"},
		{"som_10_7", func(is func(string) float64) float64 {
			return exchanger.Effectiveness(is("NTU"), is("Cr"))
		}, 1e-4, "effectiveness_exact_series"},
	} {
		is := func(quantity string) float64 {
			row, ok := book[tt.row+"/"+quantity]
			if !ok {
				t.Fatalf("heat_exchanger_worked.csv has no %s of %s", quantity, tt.row)
			}
			return row.Number(t, "value")
		}
		if got, want := tt.got(is), is(tt.want); !(math.Abs(got/want-1) <= tt.tol) {
			t.Errorf("%s %s: got %g, want %g", tt.row, tt.want, got, want)
		}
	}
}

// Beyond its ranges an exchanger stays between nothing and everything.
func TestLimits(t *testing.T) {
	for _, ntu := range []float64{0, 1e-9, 1, 50, 1e6, math.Inf(1)} {
		for _, cr := range []float64{0, 1e-8, 0.5, 1 - 1e-8, 1} {
			if e := exchanger.Effectiveness(ntu, cr); !(e >= 0 && e <= 1+1e-12) {
				t.Errorf("Effectiveness(%g, %g) = %g", ntu, cr, e)
			}
		}
	}
	if kwk := exchanger.Conductance(100, 0, 50); kwk != 0 {
		t.Errorf("a still stream takes %g", kwk)
	}
	for _, in := range [][2]float64{{math.NaN(), 0.5}, {2, math.NaN()}} {
		if e := exchanger.Effectiveness(in[0], in[1]); !math.IsNaN(e) {
			t.Errorf("Effectiveness(%g, %g) = %g, want NaN", in[0], in[1], e)
		}
	}
}

func BenchmarkEffectiveness(b *testing.B) {
	b.ReportAllocs() // want 0
	sum := 0.0
	for i := 0; i < b.N; i++ {
		sum += exchanger.Effectiveness(1.5, 0.6)
	}
	if !(sum > 0) {
		b.Fatal(sum)
	}
}
