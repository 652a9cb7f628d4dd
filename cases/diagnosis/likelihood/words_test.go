package likelihood_test

import (
	"encoding/json"
	"testing"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// What the tables name is said in every language: each check with how it is
// done and its caution, each outcome, each group of codes and each finding.
func TestTablesHaveTheirWords(t *testing.T) {
	tables := shipped(t)
	var keys []string
	for _, c := range tables.Checks() {
		keys = append(keys, c.Title().Key(), c.Text().Key(), c.Caution().Key())
	}
	for _, kind := range cases.Words[cases.TestKind]() {
		for _, o := range tables.Outcomes(kind) {
			keys = append(keys, evidence.OutcomeText(kind, o.Word).Key())
		}
	}
	var rows []struct {
		Codes   []string
		Finding string
	}
	for _, file := range []string{"codes", "findings"} {
		text, err := assets.Diagnosis.ReadFile("diagnosis/" + file + ".json")
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &rows); err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			if r.Codes != nil {
				keys = append(keys, "code-group."+r.Codes[0])
			} else if r.Finding != "" {
				keys = append(keys, "finding."+r.Finding)
			}
		}
	}
	for _, l := range say.Langs() {
		words, err := say.Catalogue(l)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range keys {
			if words[key] == "" {
				t.Errorf("%s: %q has no words", l, key)
			}
		}
	}
}
