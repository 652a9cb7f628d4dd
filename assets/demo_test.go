package assets_test

import (
	"io/fs"
	"testing"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// demo reads the demo notebook, by file name.
func demo(t *testing.T) map[string]cases.Case {
	t.Helper()
	names, err := fs.Glob(assets.Demo, "demo/*.json")
	if err != nil || len(names) < 10 {
		t.Fatalf("demo/*.json: %d files, %v; want at least 10", len(names), err)
	}
	all := map[string]cases.Case{}
	for _, name := range names {
		text, err := fs.ReadFile(assets.Demo, name)
		if err != nil {
			t.Fatal(err)
		}
		if all[name], err = cases.Decode(text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	return all
}

func TestDemoCasesDiffer(t *testing.T) {
	ids, titles := map[string]string{}, map[string]string{}
	causes, layouts := map[cases.Cause]bool{}, map[string]bool{}
	open := false
	for name, c := range demo(t) {
		if len(c.ID) != 26 || ids[c.ID] != "" {
			t.Errorf("%s: id %q: want 26 letters of its own, as %s has", name, c.ID, ids[c.ID])
		}
		if c.Title == "" || titles[c.Title] != "" {
			t.Errorf("%s: title %q: want one of its own, as %s has", name, c.Title, titles[c.Title])
		}
		ids[c.ID], titles[c.Title], layouts[c.Loop.Layout] = name, name, true
		if c.Verdict.Cause == "" {
			open = true
		} else {
			causes[c.Verdict.Cause] = true
		}
	}
	if len(causes) < 8 || !causes[cases.Healthy] || !open {
		t.Errorf("%d causes, healthy %v, open %v; want at least 8, a healthy and an open case", len(causes), causes[cases.Healthy], open)
	}
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range loops {
		if !layouts[l.ID] {
			t.Errorf("no case has the layout %s", l.ID)
		}
	}
}

// told are the flags that a cause must raise before the repair. Which flags
// speak for which cause: the trade's table of signatures, common practice.
var told = map[cases.Cause][]string{
	"thermostat-stuck-open":   {"thermostat-passing-early", "engine-below-target", "thermostat-bench"},
	"thermostat-stuck-closed": {"thermostat-not-opening", "engine-above-rating", "thermostat-bench"},
	"radiator-restricted":     {"flow-restricted", "core-patch"},
	"fan-not-running":         {"fan-not-running", "air-side"},
	"pump-weak":               {"pump-weak", "pump-drive"},
	"lower-hose-collapse":     {"lower-hose-collapse", "flow-restricted"},
	"heater-core-restricted":  {"heater-restricted"},
	"heater-air-side":         {"heater-air-side"},
	"sensor-reads-low":        {"sensor-disagrees", "sensor-resistance"},
	"combustion-leak":         {"gas-positive", "pressure-drop", "bubbles"},
	"cap-weak":                {"cap-weak"},
	cases.Healthy:             {},
}

func TestDemoEvidenceAgreesWithTheVerdicts(t *testing.T) {
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range demo(t) {
		before := acts(t, a, name, c, cases.BeforeRepair)
		want, known := told[c.Verdict.Cause]
		if !known && c.Verdict.Cause != "" {
			t.Errorf("%s: no flags are told for %s", name, c.Verdict.Cause)
		}
		for _, id := range want {
			if _, ok := before[id]; !ok {
				t.Errorf("%s: %s without %s", name, c.Verdict.Cause, id)
			}
		}
		well := []cases.Stage{cases.AfterRepair}
		if c.Verdict.Cause == cases.Healthy {
			well = append(well, cases.BeforeRepair)
		}
		for _, stage := range well {
			for id, pressing := range acts(t, a, name, c, stage) {
				if pressing {
					t.Errorf("%s, %s: %s asks to act", name, stage.Name(), id)
				}
			}
		}
	}
}

// acts are the flags of one stage's rounds, logs and tests by themselves, and
// whether they ask to act. No reading may contradict its neighbour.
func acts(t *testing.T, a *evidence.Analyst, name string, c cases.Case, stage cases.Stage) map[string]bool {
	t.Helper()
	part := c
	part.Rounds, part.Tests, part.Logs = nil, nil, nil
	for _, l := range c.Logs {
		if l.Stage == stage {
			part.Logs = append(part.Logs, l)
		}
	}
	for _, r := range c.Rounds {
		if r.Stage == stage {
			part.Rounds = append(part.Rounds, r)
		}
	}
	for _, test := range c.Tests {
		if test.Stage == stage {
			part.Tests = append(part.Tests, test)
		}
	}
	found := map[string]bool{}
	for _, f := range a.Analyse(&part).Flags {
		found[f.ID] = found[f.ID] || f.Severity == evidence.Act
		if f.ID == "reading-impossible" || f.ID == "point-not-in-layout" {
			t.Errorf("%s, %s, round %d: %s", name, stage.Name(), f.Round, f.Text)
		}
	}
	return found
}
