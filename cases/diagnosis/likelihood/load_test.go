package likelihood_test

import (
	"bytes"
	"errors"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"loopbook/assets"
	"loopbook/cases/diagnosis/likelihood"
)

// load loads the shipped tables with one file as change makes it.
func load(t *testing.T, file string, change func(text []byte) []byte) error {
	t.Helper()
	files := fstest.MapFS{}
	names, err := fs.Glob(assets.Diagnosis, "diagnosis/*.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := assets.Diagnosis.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if name == "diagnosis/"+file+".json" {
			text = change(text)
		}
		files[name] = &fstest.MapFile{Data: text}
	}
	_, err = likelihood.Load(files)
	return err
}

func TestFaultyDataNamesThePlace(t *testing.T) {
	if _, err := likelihood.Shipped(); err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ file, old, new, want string }{
		{"prior", `"per_1000": 46`, `"per_1000": 47`, "prior.json: per_1000 sums to 1001"},
		{"prior", `"per_1000": 46`, `"per_1000": 0`, "prior.json: [1].per_1000"},
		{"prior", `"cause": "pump-weak"`, `"cause": "pump-strong"`, "prior.json: [8].cause"},
		{"prior", `"cause": "pump-weak"`, `"cause": "none"`, `prior.json: [8].cause: "none" stands twice`},
		{"prior", `"class": "judgement"`, `"class": "hearsay"`, "prior.json: [0].class"},
		{"prior", "[", "{", "prior.json"},
		{"symptoms", `"pump-weak": 0.3`, `"pump-weak": 1`, "symptoms.json: [0].given.pump-weak"},
		{"symptoms", `"pump-weak": 0.3`, `"pump-strong": 0.3`, "symptoms.json: [0].given.pump-strong"},
		{"symptoms", `"else": 0.012`, `"else": 0`, "symptoms.json: [1].else"},
		{"symptoms", `"symptom": "gauge-low"`, `"symptom": "gauge-swings"`, "symptoms.json: [2].symptom"},
		{"symptoms", `"reason"`, `"season"`, `symptoms.json: [0].json: unknown field "season"`},
		{"symptoms", "[\n", "[\n{},", "symptoms.json: [0].symptom"},
		{"codes", `"P0126"`, `"P0128"`, "codes.json: [1].codes"},
		{"codes", `["P026F"]`, `[]`, "codes.json: [2].codes"},
		{"codes", `"else": 0.02`, `"else": 2`, "codes.json: [0].else"},
		{"frames", `"frame": "hot-standing"`, `"frame": "hot"`, `frames.json: [0].frame: unknown word "hot"`},
		{"frames", `"fan-not-running": 0.9`, `"fan-not-running": 1`, "frames.json: [0].given.fan-not-running"},
		{"tests", `"check": "cap", "outcome": "weak"`, `"check": "cap", "outcome": "late"`, "tests.json: [5].outcome"},
		{"tests", `"check": "level"`, `"check": "levels"`, "].check"},
		{"tests", `"check": "level", "outcome": "pass"`, `"check": "level", "outcome": "full"`, "].else"},
		{"tests", `"outcome": "pass", "class"`, `"outcome": "pass", "else": 0.5, "class"`, "tests.json: [0].else"},
		{"tests", `"external-leak": 0.12`, `"external-leak": 0.22`, "tests.json: pressure-hold: given.external-leak"},
		{"findings", `"finding": "air-side"`, `"finding": "flow-restricted"`, "findings.json: [6].finding"},
		{"findings", `"engine bypass"`, `"engine by-pass"`, `findings.json: [9].needs: unknown word "by-pass"`},
		{"checks", `"check": "hose-point"`, `"check": "hose"`, "checks.json: [3].check"},
		{"checks", `"minutes": 2`, `"minutes": 0`, "checks.json: [0].minutes"},
		{"checks", `"needs": "cold"`, `"needs": "frozen"`, "checks.json: [0].needs"},
	} {
		err := load(t, tt.file, func(text []byte) []byte { return bytes.Replace(text, []byte(tt.old), []byte(tt.new), 1) })
		if !errors.Is(err, likelihood.ErrData) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s with %s for %s: %v, want %q", tt.file, tt.new, tt.old, err, tt.want)
		}
	}
}

func TestMissingRowIsNamed(t *testing.T) {
	for file, want := range map[string]string{
		"prior": `the cause "none"`, "symptoms": `the symptom "warning-light"`, "tests": "pressure-hold", "checks": `the check `,
		"findings": `the finding ""`, "frames": `the frame "hot-standing"`,
	} {
		err := load(t, file, func([]byte) []byte { return []byte("[]") })
		if !errors.Is(err, likelihood.ErrData) || !strings.Contains(err.Error(), want) {
			t.Errorf("%s without rows: %v, want %s", file, err, want)
		}
	}
}
