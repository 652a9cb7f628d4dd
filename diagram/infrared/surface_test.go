package infrared_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"loopbook/diagram/infrared"
	"loopbook/diagram/published"
)

// TestNamed: each word's range lies within what the published rows of that
// material and condition span.
func TestNamed(t *testing.T) {
	rows := published.Rows(t, "reference/emissivity.csv")
	for word, cited := range map[string][2]string{ // how material and condition begin
		"rubber":             {"rubber", ""},
		"plastic":            {"plastic", ""},
		"tape":               {"masking tape;vinyl electrical tape", ""},
		"paint":              {"paint;oil paints;lacquer", ";all colours;3 or 8;black matt"},
		"cast-iron":          {"iron, cast", "oxidised;casting skin"},
		"aluminium-bare":     {"aluminium", "unoxidised;polished;rough;sheet"},
		"aluminium-oxidised": {"aluminium", "oxidised"},
		"brass":              {"brass", ""},
		"steel-oxidised":     {"iron", "oxidised"},
	} {
		low, high := span(t, rows, cited[0], cited[1])
		s, err := infrared.Named(word)
		if err != nil || s.Word != word || s.Source == "" {
			t.Errorf("Named(%q) = %+v, %v", word, s, err)
		}
		if !(s.Low >= low && s.High <= high && s.Low <= s.Typical && s.Typical <= s.High) {
			t.Errorf("Named(%q) = %v, %v, %v, published %v to %v", word, s.Low, s.Typical, s.High, low, high)
		}
	}
}

// span is the least and the greatest of the rows whose cells begin with one of
// the texts.
func span(t *testing.T, rows []published.Row, material, condition string) (low, high float64) {
	t.Helper()
	low, high = 1, 0
	for _, r := range rows {
		if begins(r["material"], material) && begins(r["condition"], condition) {
			low, high = min(low, r.Number(t, "emissivity_low")), max(high, r.Number(t, "emissivity_high"))
		}
	}
	return low, high
}

func begins(cell, texts string) bool {
	for _, text := range strings.Split(texts, ";") {
		if text == "" && (texts == "" || cell == "") || text != "" && strings.HasPrefix(cell, text) {
			return true
		}
	}
	return false
}

// TestNamedTrade: an instrument handbook (T12 in testdata/trade/sources.md).
func TestNamedTrade(t *testing.T) {
	words := map[string]string{"IR1": "rubber", "IR2": "tape", "IR3": "brass", "IR4": "steel-oxidised", "IR5": "cast-iron"}
	seen := 0
	for _, r := range published.Rows(t, "trade/numbers.csv") {
		word, ok := words[r["id"]]
		if !ok {
			continue
		}
		seen++
		s, err := infrared.Named(word)
		if err != nil {
			t.Fatal(err)
		}
		for _, column := range []string{"low", "typical", "high"} {
			if r[column] == "" {
				continue
			}
			if want := r.Number(t, column); !(want >= s.Low && want <= s.High) {
				t.Errorf("%s: %v is outside %s, %v to %v (%s)", r["id"], want, word, s.Low, s.High, r["source"])
			}
		}
	}
	if seen != len(words) {
		t.Errorf("%d of %d rows found", seen, len(words))
	}
}

func TestSurfaceFaults(t *testing.T) {
	if _, err := infrared.Named("velvet"); err == nil || !strings.Contains(err.Error(), `"velvet"`) {
		t.Errorf(`Named("velvet"): %v, want an error that names it`, err)
	}
	for _, e := range []float64{0, -0.5, 1.01, math.NaN(), math.Inf(1)} {
		if s, err := infrared.Stated(e); !errors.Is(err, infrared.ErrRange) {
			t.Errorf("Stated(%v) = %v, %v, want ErrRange", e, s, err)
		}
	}
	for _, e := range []float64{0.001, 0.02, 0.5, 1} {
		if s, err := infrared.Stated(e); err != nil || s.Typical != e {
			t.Errorf("Stated(%v) = %v, %v", e, s, err)
		}
	}
	for _, data := range []string{`{`, `[{"word": "x", "low": 0.9, "typical": 0.8, "high": 1}]`} {
		if got, err := infrared.ReadSurfaces([]byte(data)); err == nil {
			t.Errorf("readSurfaces(%s) = %v", data, got)
		}
	}
}
