package evidence_test

import (
	"errors"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/published"
)

// The shipped list against testdata/trade/dtc.csv, two public lists put in our
// words: same codes, same meanings, and each in every language.
func TestShippedCodesAreTheSourced(t *testing.T) {
	codes, err := evidence.ShippedCodes()
	if err != nil {
		t.Fatal(err)
	}
	rows := published.Rows(t, "trade/dtc.csv")
	for _, r := range rows {
		got, ok := codes[r["code"]]
		if says := codes.Meaning(r["code"]).String(); !ok || says != r["meaning_own_words"] || len(got.Causes) == 0 {
			t.Errorf("%s: %+v, %q, want %q", r["code"], got, says, r["meaning_own_words"])
		}
	}
	if len(codes) != len(rows) {
		t.Errorf("%d codes, want %d", len(codes), len(rows))
	}
}

func TestCodesPoint(t *testing.T) {
	for _, tt := range []struct{ code, want string }{
		{"P0128", "Coolant stays below"},
		{"p0128 ", "Coolant stays below"},
		{"01 28", "P0128: Coolant stays below"},
		{"0x0128", "P0128: Coolant stays below"},
		{"P1128", "maker-specific"},
		{"B1234", "maker-specific"},
		{"P0300", "not in the list"},
		{"X9", "no trouble code"},
		{"P9999", "a figure from 0 to 3"},
	} {
		f := find(analyst(t).Analyse(&cases.Case{Codes: []cases.Code{{Code: tt.code, State: "pending"}}}), "code-points-at")
		if f == nil || f.Severity != evidence.Note || !strings.Contains(f.Text.String(), tt.want) {
			t.Errorf("%q: %+v, want %q", tt.code, f, tt.want)
		}
		if got := analyst(t).CodeMeaning(tt.code); !strings.Contains(got, tt.want) {
			t.Errorf("CodeMeaning(%q) = %q, want %q", tt.code, got, tt.want)
		}
	}
}

// The form of a code is SAE J2012's by public descriptions: a letter of four, a digit up to 3,
// three hexadecimal digits; or the two bytes of it.
func TestFormOfACode(t *testing.T) {
	for word, want := range map[string]bool{"P0128": true, " p00b7 ": true, "U3FFF": true, "0128": true, "P0128X": false, "X0128": false, "P4128": false, "P012": false, "thermostat": false, "": false} {
		if evidence.IsCode(word) != want {
			t.Errorf("IsCode(%q) = %v", word, !want)
		}
	}
}

// Each code of the list says which part of the loop it points at, in words.
func TestCodesPointAtAPart(t *testing.T) {
	codes, err := evidence.ShippedCodes()
	if err != nil {
		t.Fatal(err)
	}
	for code := range codes {
		f := find(analyst(t).Analyse(&cases.Case{Codes: []cases.Code{{Code: code}}}), "code-points-at")
		if f == nil || len(f.Because) < 2 {
			t.Fatalf("%s: %+v", code, f)
		}
		if got := f.Because[0].String(); !strings.HasPrefix(got, "points at: ") || strings.Contains(got, "code-part.") {
			t.Errorf("%s: %q", code, got)
		}
	}
}

func TestFaultyCodeListNamesTheLine(t *testing.T) {
	const head = "code,parts,causes,class\nP0128,thermostat,thermostat-early,published\n"
	for name, line := range map[string]string{
		"twice":     "P0128,thermostat,thermostat-early,published",
		"no code":   "0128,thermostat,thermostat-early,published",
		"no causes": "P0217,thermostat,,published",
		"no parts":  "P0217,,thermostat-early,published",
	} {
		_, err := evidence.ReadCodes([]byte(head + line + "\n"))
		if !errors.Is(err, evidence.ErrCodes) || !strings.Contains(err.Error(), "line 3") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
