package evidence_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"loopbook/assets"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// becauseOf is all that stands under a flag, in English.
func becauseOf(f *evidence.Flag) string {
	return strings.Join(say.English().All(f.Because), " ")
}

// unsaid finds what no reader should see: a template's name, and a place that
// nothing was put into.
var unsaid = regexp.MustCompile(`\b(flag|because|by|how|span|value|sum|guide|class|code|code-cause|source|place|point|loop|cause|stage|surface|base|level|fan-state)\.[a-z0-9_-]+|\{|%!`)

// said checks that the texts are sentences in every language and in other units.
func said(t *testing.T, what string, texts ...say.Text) {
	t.Helper()
	for _, l := range say.Langs() {
		by, err := say.In(l, units.US())
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range texts {
			if s := by.Say(text); s == "" || unsaid.MatchString(s) || strings.Contains(s, "°C") || strings.Contains(s, "kPa") {
				t.Errorf("%s in %s: %q", what, l, s)
			}
		}
	}
}

// Whatever stands in a case is told in every language, and in a person's units
// throughout.
func TestFindingsAreSaidInEveryLanguage(t *testing.T) {
	a := analyst(t)
	for _, c := range casetest.Notebook(300) {
		f := a.Analyse(&c)
		for _, flag := range f.Flags {
			said(t, flag.ID, append([]say.Text{flag.Text}, flag.Because...)...)
		}
		for _, r := range f.Rounds {
			for _, reading := range r.Readings {
				if reading.Expected != nil {
					said(t, string(reading.Point), reading.Expected.Source, reading.Expected.Class.Text())
				}
			}
		}
		for i := range c.Tests {
			for _, s := range evidence.Workshop(&c, &c.Tests[i]).Sums {
				said(t, string(c.Tests[i].Kind), s.Name, s.Value)
			}
		}
	}
}

func TestEverySourceOfARangeHasItsWords(t *testing.T) {
	type row struct {
		Class  evidence.Class
		Source struct{ Words string }
	}
	var rows struct{ Deltas, Points []row }
	if err := json.Unmarshal(assets.Expected, &rows); err != nil || len(rows.Deltas) == 0 || len(rows.Points) == 0 {
		t.Fatalf("%d and %d rows, %v", len(rows.Deltas), len(rows.Points), err)
	}
	for _, r := range append(rows.Deltas, rows.Points...) {
		said(t, r.Source.Words, say.Of("source."+r.Source.Words), r.Class.Text())
	}
}

func TestEveryCodeHasItsWords(t *testing.T) {
	codes, err := evidence.ShippedCodes()
	if err != nil {
		t.Fatal(err)
	}
	for word, code := range codes {
		said(t, word, codes.Tell(word), code.Class.Text())
	}
	for code := range codes {
		c := casetest.Notebook(1)[0]
		c.Codes[0].Code = code
		if f := find(analyst(t).Analyse(&c), "code-points-at"); f != nil {
			said(t, code, f.Because...)
		}
	}
}
