package infrared_test

import (
	"errors"
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/infrared"
	"loopbook/diagram/published"
)

func stated(t *testing.T, emissivity float64) infrared.Surface {
	t.Helper()
	s, err := infrared.Stated(emissivity)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func off(a, b diagram.Celsius) float64 { return math.Abs(float64(a.Minus(b))) }

// TestShows: the balance in testdata/reference/README.md, solved by another
// program, and back.
func TestShows(t *testing.T) {
	for _, r := range published.Rows(t, "reference/radiation_apparent.csv") {
		at, around := diagram.Celsius(r.Number(t, "T_true_degC")), diagram.Celsius(r.Number(t, "T_surroundings_degC"))
		s := stated(t, r.Number(t, "emissivity_true"))
		for column, reflected := range map[string]diagram.Celsius{
			"T_apparent_band_compensated_degC":           around,
			"T_apparent_band_compensated_at_20degC_degC": 20,
		} {
			gun := infrared.Gun{Emissivity: r.Number(t, "emissivity_setting"), ReflectedC: reflected}
			want := diagram.Celsius(r.Number(t, column))
			got := gun.Shows(at, s, around)
			if !(off(got, want) <= 0.02) {
				t.Errorf("%+v.Shows(%v, %v, %v) = %v, want %v", gun, at, s.Typical, around, got, want)
			}
			back, err := gun.Correct(got, s, around)
			if err != nil || !(off(back.TrueC, at) <= 1e-4) {
				t.Errorf("%+v.Correct(%v, %v, %v) = %v, %v, want %v", gun, got, s.Typical, around, back, err, at)
			}
		}
	}
}

func TestCorrect(t *testing.T) {
	for _, r := range published.Rows(t, "reference/radiation_correction.csv") {
		shown, around := diagram.Celsius(r.Number(t, "T_reading_degC")), diagram.Celsius(r.Number(t, "T_surroundings_degC"))
		gun := infrared.Gun{Emissivity: r.Number(t, "emissivity_setting"), ReflectedC: around}
		s, want := stated(t, r.Number(t, "emissivity_true")), diagram.Celsius(r.Number(t, "T_true_band_degC"))
		if got, err := gun.Correct(shown, s, around); err != nil || !(off(got.TrueC, want) <= 0.02) {
			t.Errorf("%+v.Correct(%v, %v, %v) = %v, %v, want %v", gun, shown, s.Typical, around, got, err, want)
		}
	}
}

// TestUncertainty against the answers for emissivities a little to each side.
func TestUncertainty(t *testing.T) {
	gun := infrared.Gun{Emissivity: 0.95, ReflectedC: 25}
	for _, e := range []float64{0.3, 0.6, 0.8, 0.95} {
		s := stated(t, e)
		got, err := gun.Correct(70, s, 25)
		if err != nil {
			t.Fatal(err)
		}
		const d = 1e-4
		less, err1 := gun.Correct(70, stated(t, e-d), 25)
		more, err2 := gun.Correct(70, stated(t, e+d), 25)
		want := off(less.TrueC, more.TrueC) / (2 * d) * (s.High - s.Low) / 2
		if err1 != nil || err2 != nil || math.Abs(float64(got.UncertainK)/want-1) > 1e-4 {
			t.Errorf("emissivity %v: uncertain by %v, want %v", e, got.UncertainK, want)
		}
	}
}

// TestDoubtful: what a technician may believe of a reading taken in 20 °C.
// Rubber and tape are the good targets and shiny metal is not: T12 in
// testdata/trade/sources.md. At the air's temperature emissivity is nothing.
func TestDoubtful(t *testing.T) {
	gun := infrared.Gun{Emissivity: 0.95, ReflectedC: 20}
	for _, tt := range []struct {
		word  string
		trueC diagram.Celsius
		want  bool
	}{
		{"rubber", 110, false}, {"tape", 110, false}, {"paint", 110, false}, {"plastic", 110, false},
		{"brass", 90, true}, {"aluminium-bare", 90, true}, {"aluminium-oxidised", 90, true}, {"cast-iron", 90, true},
		{"brass", 21, false}, {"aluminium-bare", 20.5, false}, {"steel-oxidised", 35, false}, {"steel-oxidised", 90, true},
	} {
		s, err := infrared.Named(tt.word)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := gun.Correct(gun.Shows(tt.trueC, s, 20), s, 20); err != nil || got.Doubtful() != tt.want {
			t.Errorf("%s at %v °C: %+v (%v), doubtful %v, want %v", tt.word, tt.trueC, got, err, got.Doubtful(), tt.want)
		}
	}
}

func TestNoSolution(t *testing.T) {
	gun := infrared.Gun{Emissivity: 0.95, ReflectedC: 20}
	for _, tt := range []struct {
		shown, around diagram.Celsius
		emissivity    float64
	}{
		{90, 20, 0.05},  // would have to glow
		{20, 110, 0.3},  // the mirrored engine alone sends more
		{300, 20, 0.30}, // above 400 °C
	} {
		got, err := gun.Correct(tt.shown, stated(t, tt.emissivity), tt.around)
		if !errors.Is(err, infrared.ErrNoSolution) {
			t.Errorf("Correct(%v) = %v, %v, want ErrNoSolution", tt, got, err)
		}
	}
}

func TestGunRange(t *testing.T) {
	rubber, nan := stated(t, 0.95), diagram.Celsius(math.NaN())
	for _, tt := range []struct {
		gun           infrared.Gun
		shown, around diagram.Celsius
		s             infrared.Surface
	}{
		{infrared.Gun{Emissivity: 0, ReflectedC: 20}, 90, 20, rubber},
		{infrared.Gun{Emissivity: 1.1, ReflectedC: 20}, 90, 20, rubber},
		{infrared.Gun{Emissivity: math.NaN(), ReflectedC: 20}, 90, 20, rubber},
		{infrared.Gun{Emissivity: 0.95, ReflectedC: -300}, 90, 20, rubber},
		{infrared.Gun{Emissivity: 0.95, ReflectedC: 20}, nan, 20, rubber},
		{infrared.Gun{Emissivity: 0.95, ReflectedC: 20}, 90, 500, rubber},
		{infrared.Gun{Emissivity: 0.95, ReflectedC: 20}, 90, 20, infrared.Surface{}},
	} {
		if got, err := tt.gun.Correct(tt.shown, tt.s, tt.around); !errors.Is(err, infrared.ErrRange) {
			t.Errorf("Correct(%+v) = %v, %v, want ErrRange", tt, got, err)
		}
	}
}

var sink infrared.Corrected

// BenchmarkCorrect: six rounds of fifteen readings have a millisecond in
// all, so wanted below 5 µs and no allocation.
func BenchmarkCorrect(b *testing.B) {
	gun := infrared.Gun{Emissivity: 0.95, ReflectedC: 21}
	s, err := infrared.Named("cast-iron")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		sink, _ = gun.Correct(diagram.Celsius(40+i%60), s, 30)
	}
}
