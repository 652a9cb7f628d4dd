package vin_test

import (
	"slices"
	"strings"
	"testing"

	"loopbook/cases/vin"
)

func TestPublishedNumbersFit(t *testing.T) {
	for _, tt := range []struct{ text, source string }{
		{"1G4AH59H45G118341", "49 CFR 565.15(c), the sample of table V: remainder 4"},
		{"1J9RP1A36A1644345", "NHTSA, outline for new manufacturers: 314/11 leaves 6"},
		{"11111111111111111", "the weights sum to 89 = 8 · 11 + 1, by 49 CFR 565.15, table IV"},
		{" 1g4-ah59h4-5g118341 ", "the sample again, as somebody types it"},
	} {
		if n := vin.Read(tt.text); n.Fault != vin.Fine || !n.Bound {
			t.Errorf("Read(%q) = %+v, want no fault (%s)", tt.text, n, tt.source)
		}
	}
}

// Any one wrong sign, and any two neighbours that changed places, is told unless
// their values are the same modulo 11: a property of the weights.
func TestSlipsAreTold(t *testing.T) {
	const good = "1G4AH59H45G118341"
	if n := vin.Read("1G4AH59H55G118341"); n.Fault != vin.WrongCheck || n.Want != '4' {
		t.Errorf("a wrong check digit = %+v, want 4 (49 CFR 565.15, table V)", n)
	}
	for i := range good {
		for _, figure := range "0123456789" {
			slip := good[:i] + string(figure) + good[i+1:]
			if was := good[i] >= '0' && good[i] <= '9'; was && slip != good && vin.Read(slip).Fault != vin.WrongCheck {
				t.Errorf("%s for %s isn't told", slip, good)
			}
		}
	}
	for _, tt := range []struct {
		text string
		want vin.Fault
		at   int
	}{
		{"", vin.WrongSize, 0}, {"1G4AH59H45G11834", vin.WrongSize, 0}, {"1G4AH59H45G1183411", vin.WrongSize, 0},
		{"1G4AH59H45O118341", vin.WrongSign, 11}, {"IG4AH59H45G118341", vin.WrongSign, 1}, {"1G4AH59H45G11834Q", vin.WrongSign, 17},
		{"1G4AH59H45G1183é", vin.WrongSize, 0}, {"1G4AH59H45G11834é", vin.WrongSign, 17}, {"1G4\u0410H59H45G118341", vin.WrongSign, 4}, // a Cyrillic A
		{"1G4AH59H45G11834\x00", vin.WrongSign, 17},
	} {
		if n := vin.Read(tt.text); n.Fault != tt.want || n.At != tt.at {
			t.Errorf("Read(%q) = %+v, want %q at %d", tt.text, n, tt.want, tt.at)
		}
	}
}

// Elsewhere the ninth sign is the maker's own: the fault is told, and that no
// rule binds it.
func TestElsewhereNoRuleBinds(t *testing.T) {
	n := vin.Read("WZZZZZ00ZAA000001")
	if n.Fault != vin.WrongCheck || n.Bound {
		t.Errorf("Read = %+v, want a check digit that binds nobody", n)
	}
}

// 49 CFR 565.15(d)(1), table VII: 2005 is 5, 2010 is A, 2039 is 9; the seventh
// sign tells the round. The sample of table V is so of 2005.
func TestYears(t *testing.T) {
	for _, tt := range []struct {
		text string
		want []int
	}{
		{"1G4AH59H45G118341", []int{2005}},
		{"1J9RP1A36A1644345", []int{2010}},
		{"11111181191111111", []int{2009}},
		{"111111A1191111111", []int{2039}},
		{"WZZZZZ00ZAA000001", []int{1980, 2010}},
		{"111111111U1111111", nil}, {"11111111101111111", nil}, {"1111", nil},
	} {
		if got := vin.Read(tt.text).Years(); !slices.Equal(got, tt.want) {
			t.Errorf("Years of %s = %v, want %v", tt.text, got, tt.want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("1G4AH59H45G118341")
	f.Add("é-\xff")
	f.Fuzz(func(t *testing.T, text string) {
		n := vin.Read(text)
		if n.Fault == vin.WrongCheck {
			mended := n.Text[:8] + string(n.Want) + n.Text[9:]
			if again := vin.Read(mended); again.Fault != vin.Fine {
				t.Fatalf("%q mended to %q is %+v", text, mended, again)
			}
		}
		if strings.ContainsAny(n.Text, "\t") || len(n.Years()) > 2 {
			t.Fatalf("%q: %q %v", text, n.Text, n.Years())
		}
	})
}
