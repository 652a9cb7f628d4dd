package say_test

import (
	"encoding/json"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"loopbook/assets"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Units are spoken by the SI brochure's rules (blank before the unit) and the
// exact conversions of NIST SP 811, appendix B; decimal signs are those of
// ISO 80000-1.
func TestQuantitiesAreSaidInTheChosenUnit(t *testing.T) {
	us, err := say.In(say.EN, units.US())
	if err != nil {
		t.Fatal(err)
	}
	german, err := say.In(say.DE, units.Metric())
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		by   say.Speaker
		in   string
		arg  any
		want string
	}{
		{say.English(), "{0}", diagram.Celsius(88.4), "88 °C"},
		{say.English(), "{0.1}", diagram.Celsius(88.44), "88.4 °C"},
		{say.English(), "{0#} to", diagram.Celsius(88), "88 to"},
		{us, "{0}", diagram.Celsius(88.4), "191 °F"},
		{us, "{0}", diagram.DeltaK(11), "20 F°"},
		{us, "{0}", diagram.KPa(100), "14.5 psi"},
		{us, "{0}", say.Kmh(80.4672), "50 mph"},
		{german, "{0.1}", diagram.Celsius(88.44), "88,4 °C"},
		{german, "{0^}", say.Own("überlauf"), "Überlauf"},
		{say.English(), "{0} {0|reading|readings}", 1, "1 reading"},
		{say.English(), "{0} {0|reading|readings}", 0, "0 readings"},
		{say.English(), "{1} {x} {", 1, "{1} {x} {}"},
	} {
		if got := tt.by.Fill(tt.in, tt.arg); got != tt.want {
			t.Errorf("%q of %v in %s = %q, want %q", tt.in, tt.arg, tt.by.Lang, got, tt.want)
		}
	}
}

func TestRowsLeaveOutWhatIsEmpty(t *testing.T) {
	got := say.List(say.Own("one"), say.Text{}, say.Own("two")).String()
	if got != "one, two" {
		t.Errorf("List = %q", got)
	}
	if got := say.Items(say.Own("a, b"), say.Value(diagram.Celsius(88.4))).String(); got != "a, b; 88 °C" {
		t.Errorf("Items = %q", got)
	}
	if !say.List(say.Text{}).Empty() || !say.Sentences().Empty() || say.Own("x").Empty() {
		t.Error("Empty is wrong of a row without texts, or of a person's words")
	}
}

var place = regexp.MustCompile(`\{(\d+)[^}]*\}`)

// A translation says as much as the English: the same names, and in each the same
// arguments. The window speaks English only.
func TestEveryLanguageSaysTheSame(t *testing.T) {
	english, err := say.Catalogue(say.EN)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range say.Langs() {
		words, err := say.Catalogue(l)
		if err != nil {
			t.Fatal(err)
		}
		for key, text := range english {
			other, ok := words[key]
			switch {
			case strings.HasPrefix(key, "window."):
			case !ok:
				t.Errorf("%s: %q is missing", l, key)
			case other == "":
				t.Errorf("%s: %q says nothing", l, key)
			case !slices.Equal(places(text), places(other)):
				t.Errorf("%s: %q has the places %v, in English %v", l, key, places(other), places(text))
			}
		}
		for key := range words {
			if _, ok := english[key]; !ok {
				t.Errorf("%s: %q isn't in English", l, key)
			}
		}
	}
}

func places(text string) []string {
	var out []string
	for _, m := range place.FindAllStringSubmatch(text, -1) {
		if !slices.Contains(out, m[1]) {
			out = append(out, m[1])
		}
	}
	slices.Sort(out)
	return out
}

// encoding/json takes the last of two equal names without a word.
func TestNoNameStandsTwiceInAFile(t *testing.T) {
	files, err := fs.Glob(assets.Words, "words/*/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		raw, err := fs.ReadFile(assets.Words, file)
		if err != nil {
			t.Fatal(err)
		}
		var words map[string]string
		if err := json.Unmarshal(raw, &words); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		lines := strings.Count(string(raw), "\": \"")
		if lines != len(words) {
			t.Errorf("%s: %d names on %d lines", file, len(words), lines)
		}
	}
}

// A difference that is none once it is rounded has no sign.
func TestNoDifferenceHasNoSign(t *testing.T) {
	for k, want := range map[diagram.DeltaK]string{0: "0 K", 0.04: "0 K", -0.04: "0 K", 0.2: "+0.2 K", -3: "-3 K"} {
		if got := strings.ReplaceAll(say.English().Say(say.Signed(k)), "−", "-"); got != want {
			t.Errorf("%g K is said %q, want %q", float64(k), got, want)
		}
	}
}
