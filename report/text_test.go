package report

import (
	"errors"
	"reflect"
	"testing"

	"loopbook/diagram/say"
)

// wide measures every letter as one.
func wide(text string) float64 { return float64(len([]rune(text))) }

func TestWrap(t *testing.T) {
	for _, tt := range []struct {
		text string
		want []string
	}{
		{"", []string{""}},
		{"one two three", []string{"one", "two", "three"}},
		{"on to it", []string{"on to", "it"}},
		{"a\n\nb\n", []string{"a", "", "b"}},
		{"  far   apart ", []string{"far", "apart"}},
		{"unbreakable", []string{"unbre", "akabl", "e"}},
		{"ab unbreakable cd", []string{"ab", "unbre", "akabl", "e cd"}},
		{"a 8 °C", []string{"a", "8 °C"}},
		{"be 8 K, so", []string{"be", "8 K,", "so"}},
		{"äöüßéñ", []string{"äöüßé", "ñ"}},
		{"154\u00a0200 km", []string{"154\u00a02", "00 km"}},
	} {
		if got := wrap(tt.text, 5, wide); !reflect.DeepEqual(got, tt.want) {
			t.Errorf("wrap(%q) = %q, want %q", tt.text, got, tt.want)
		}
	}
	if got := wrap("narrow", 0.5, wide); len(got) != 6 {
		t.Errorf("wrap narrower than a letter = %q, want a letter on each line", got)
	}
}

// Examples of Unicode Standard Annex 9: Hebrew letters run from the right, numbers
// and Latin within them from the left.
func TestRightToLeft(t *testing.T) {
	for in, want := range map[string]string{
		"plain":         "plain",
		"Zähler 12":     "Zähler 12",
		"שלום":          "םולש",
		"car מכונית ok": "car תינוכמ ok",
	} {
		if got := visual(in); got != want {
			t.Errorf("visual(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestLanguageNeedsACatalog(t *testing.T) {
	for _, text := range []string{"", "no catalog here", "/Type /Catalog\nstartxref\nnone\n", "startxref\n9\n/Type /Catalog\n"} {
		if _, err := withLanguage([]byte(text), say.EN); !errors.Is(err, errCatalog) {
			t.Errorf("withLanguage(%q): %v, want %v", text, err, errCatalog)
		}
	}
}
