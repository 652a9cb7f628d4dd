package likelihood_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/published"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// fault is what testdata/trade/signatures.csv says of a fault in prose, in the
// words of the format.
type fault struct {
	cause    cases.Cause
	symptoms []cases.Symptom // column symptom
	check    cases.TestKind  // column confirming_test; "": none of the format's checks
	outcome  string
}

var faults = map[string]fault{
	"F01":  {"thermostat-stuck-open", []cases.Symptom{"slow-warm-up", "gauge-low", "fuel-use-up", "cabin-heat-poor"}, "thermostat-bench", "open"},
	"F02":  {"thermostat-stuck-closed", []cases.Symptom{"overheats-always", "coolant-loss"}, "thermostat-bench", "shut"},
	"F02i": {"thermostat-stuck-closed", []cases.Symptom{"overheats-always"}, "thermostat-bench", "shut"},
	"F03":  {"thermostat-late", []cases.Symptom{"gauge-swings", "overheats-road"}, "thermostat-bench", "late"},
	"F04":  {"thermostat-early", []cases.Symptom{"gauge-low", "cabin-heat-poor"}, "thermostat-bench", "early"},
	"F05":  {"radiator-restricted", []cases.Symptom{"overheats-road"}, "core-scan", "patch"},
	"F06":  {"radiator-airflow", []cases.Symptom{"overheats-idle", "overheats-road"}, "core-scan", "hot-through"}, // the face's pattern
	"F07":  {"fan-not-running", []cases.Symptom{"overheats-idle"}, "fan", "dead"},
	"F08":  {"pump-weak", []cases.Symptom{"overheats-road", "cabin-heat-poor", "cabin-heat-comes-and-goes"}, "pump-drive", "belt"},
	"F09":  {"coolant-low-air", []cases.Symptom{"cabin-heat-comes-and-goes", "gauge-swings"}, "level", "low"},
	"F10":  {"lower-hose-collapse", []cases.Symptom{"overheats-road"}, "hose-look", "collapses"},
	"F11":  {"bypass-open", []cases.Symptom{"overheats-road", "slow-warm-up"}, "", ""},
	"F12":  {"heater-core-restricted", []cases.Symptom{"cabin-heat-poor"}, "heater-flow", "weak"},
	"F13":  {"heater-valve-shut", []cases.Symptom{"cabin-heat-poor"}, "heater-flow", "none"},
	"F15":  {"combustion-leak", []cases.Symptom{"coolant-loss", "hoses-hard-cold", "bubbles-in-bottle", "white-exhaust"}, "combustion-gas", "positive"},
	"F16":  {"cap-weak", []cases.Symptom{"coolant-smell", "coolant-loss"}, "cap", "weak"},
	"F17":  {"sensor-reads-low", []cases.Symptom{"fuel-use-up", "fan-never-on", "fan-always-on"}, "sensor-resistance", "low"},
	"F18":  {"sensor-reads-high", []cases.Symptom{"fan-always-on", "overheats-always"}, "sensor-resistance", "high"},
	"F19":  {"coolant-mix-wrong", []cases.Symptom{"overheats-road"}, "coolant", "far-too-strong"},
	"F20":  {"coolant-mix-wrong", nil, "coolant", "far-too-weak"},
	"F21":  {"coolant-mix-wrong", []cases.Symptom{"cabin-heat-poor"}, "coolant", "fouled"},
	"F22":  {"thermostat-heater-fault", nil, "", ""},
	"F23":  {"fan-always-running", []cases.Symptom{"fan-always-on", "slow-warm-up", "fuel-use-up"}, "fan", "runs"},
	"F24":  {"cap-vacuum-stuck", []cases.Symptom{"coolant-loss"}, "cap", "vacuum-stuck"},
	"F25":  {"heater-air-side", []cases.Symptom{"cabin-heat-poor"}, "", ""},
}

// signatures are the faults of the loop, one row for each. F00 is a healthy
// loop, F14 no fault of it.
func signatures(t *testing.T) []published.Row {
	t.Helper()
	var out []published.Row
	seen := map[string]bool{"F00": true, "F00i": true, "F14": true}
	for _, r := range published.Rows(t, "trade/signatures.csv") {
		id := r["fault_id"]
		if _, ok := faults[id]; !ok && !seen[id] {
			t.Errorf("%s (%s) is not tested", id, r["fault"])
		}
		if !seen[id] {
			out = append(out, r)
		}
		seen[id] = true
	}
	return out
}

func at(c cases.Cause) int { return slices.Index(cases.Words[cases.Cause](), c) }

// lift is how much likelier the evidence is given the cause than given the
// causes on average, by the mean of the logarithms: it is by them that evidence
// adds up.
func lift(f likelihood.Factor, c cases.Cause) float64 {
	return math.Exp(f.Log[at(c)] - sum(f.Log)/float64(len(f.Log)))
}

func TestSymptomsOfTheTradeRaiseTheirCause(t *testing.T) {
	for _, r := range signatures(t) {
		want := faults[r["fault_id"]]
		for _, f := range shipped(t).Symptoms(want.symptoms) {
			if got := lift(f, want.cause); !(got > 1.2) {
				t.Errorf("%s (%s), %s: %.2f times the average", r["fault_id"], r["symptom"], f.Label, got)
			}
		}
	}
}

var codePattern = regexp.MustCompile(`P[0-9A-F]{4}`)

func TestCodesOfTheTradeRaiseTheirCause(t *testing.T) {
	for _, r := range signatures(t) {
		cause := faults[r["fault_id"]].cause
		for _, code := range codePattern.FindAllString(r["codes"], -1) {
			codeRaises(t, code, cause)
		}
	}
}

// The list of codes names the causes that each speaks for: two public lists,
// the causes by common practice.
func TestCodesOfTheListRaiseTheirCauses(t *testing.T) {
	checked := 0
	for _, r := range published.Rows(t, "trade/dtc.csv") {
		for _, word := range strings.Split(r["fault_ids"], ";") {
			if f, ok := faults[word]; ok {
				codeRaises(t, r["code"], f.cause)
				checked++
			}
		}
	}
	if checked < 100 {
		t.Errorf("the list names only %d causes", checked)
	}
}

func codeRaises(t *testing.T, code string, cause cases.Cause) {
	t.Helper()
	got := shipped(t).Codes([]cases.Code{{Code: code}})
	if len(got) != 1 || !(lift(got[0], cause) > 1) {
		t.Errorf("%s: %s is not likelier than the average cause: %+v", code, cause, got)
	}
}

// A confirming check is likeliest with its own cause, and makes it at least
// twice as likely as the average.
func TestConfirmingChecksConfirm(t *testing.T) {
	for _, r := range signatures(t) {
		want := faults[r["fault_id"]]
		if want.check == "" {
			continue
		}
		f, ok := shipped(t).Test(want.check, want.outcome)
		if got := lift(f, want.cause); !ok || !(got > 2) || f.Log[at(want.cause)] < slices.Max(f.Log) {
			t.Errorf("%s: %s is %.2f times the average (%s)", r["fault_id"], f.Label, got, r["confirming_test"])
		}
	}
}

// What the customer says and the confirming check together put the cause first
// among all, each taken to be as frequent as the next.
func TestSymptomsAndConfirmingCheckPutTheCauseFirst(t *testing.T) {
	for _, r := range signatures(t) {
		want := faults[r["fault_id"]]
		if want.check == "" || want.check == "core-scan" && want.outcome != "patch" { // a fan that stands looks the same
			continue
		}
		check, _ := shipped(t).Test(want.check, want.outcome)
		total := slices.Clone(check.Log)
		for _, f := range shipped(t).Symptoms(want.symptoms) {
			for i, log := range f.Log {
				total[i] += log
			}
		}
		if best := slices.Index(total, slices.Max(total)); best != at(want.cause) {
			t.Errorf("%s: %v and %s put %s first, want %s", r["fault_id"], want.symptoms, check.Label, cases.Words[cases.Cause]()[best], want.cause)
		}
	}
}

// A pass makes a cause less likely and clears nothing.
func TestPassClearsNothing(t *testing.T) {
	for _, tt := range []struct {
		check  cases.TestKind
		cause  cases.Cause
		source string
	}{
		{"combustion-gas", "combustion-leak", "published, T23: one negative doesn't clear the engine"},
		{"thermostat-bench", "thermostat-late", "common practice: still water hides a lazy wax"},
		{"thermostat-bench", "thermostat-stuck-open", "common practice: a pass doesn't clear the part"},
		{"cap", "cap-weak", "published, V9: passes on the tester, leaks on its neck"},
		{"pressure-hold", "external-leak", "published, V6: some leaks open as the engine rocks"},
		{"pump-drive", "pump-weak", "common practice: an impeller isn't seen from outside"},
	} {
		f, _ := shipped(t).Test(tt.check, evidence.Pass)
		if got := lift(f, tt.cause); !(got > 0.05 && got < 0.9) {
			t.Errorf("%s passed makes %s %.2f times as likely (%s)", tt.check, tt.cause, got, tt.source)
		}
	}
}

// A healthy loop's owner complains of anything, now and then (judgement): no
// symptom alone makes it less than a fifth as likely as the average.
func TestNoSymptomRulesOutAHealthyLoop(t *testing.T) {
	for _, f := range shipped(t).Symptoms(cases.Words[cases.Symptom]()) {
		if got := lift(f, cases.Healthy); !(got > 0.2) {
			t.Errorf("%s: %.2f", f.Label, got)
		}
	}
}

// What is done on an engine that stands mustn't say that it runs, and the other way round: gas is
// drawn at idle (published, M16, T23), a warm-up is one (published, WU3), and what needs a warm
// engine is looked at while it runs (common practice, no source).
func TestChecksKnowWhetherTheEngineRuns(t *testing.T) {
	runs := append(likelihood.Walks(), likelihood.HosePoint, "combustion-gas", "hose-look", "core-scan", "heater-flow", "bubbles")
	for _, c := range shipped(t).Checks() {
		if want := slices.Contains(runs, c.Check); c.RunsEngine != want {
			t.Errorf("%s runs the engine: %v, want %v", c.Check, c.RunsEngine, want)
		}
	}
}

// What runs the engine in the workshop warns of its exhaust, in each language: carbon monoxide kills in a closed
// room (common practice, no source). A drive is outdoors.
func TestWhatRunsTheEngineWarnsOfItsExhaust(t *testing.T) {
	words := map[say.Lang]string{"en": "exhaust", "de": "abgas", "es": "escape"}
	for _, c := range shipped(t).Checks() {
		if !c.RunsEngine || c.Check == likelihood.AfterRoad {
			continue
		}
		for lang, word := range words {
			by, err := say.In(lang, units.Metric())
			if err != nil {
				t.Fatal(err)
			}
			if said := by.Say(c.Caution()); !strings.Contains(strings.ToLower(said), word) {
				t.Errorf("%s, %s: %q", c.Check, lang, said)
			}
		}
	}
}

// What nobody looked at isn't ruled out by the rest of the check: the parts of a cap, and of a pump's drive, fail by
// themselves, and a fan that is told to run and runs may run when nobody tells it to (physics).
func TestAPassSpeaksOnlyOfWhatWasNoted(t *testing.T) {
	yes, kPa := casetest.P(true), casetest.P(diagram.KPa(110))
	for _, tt := range []struct {
		test        cases.Test
		open, shown cases.Cause // what it leaves open, and what it speaks against
	}{
		{cases.Test{Kind: "cap", RatedKPa: kPa, OpensKPa: kPa, Holds: yes}, "cap-vacuum-stuck", "cap-weak"},
		{cases.Test{Kind: "cap", VacuumValveOK: yes}, "cap-weak", "cap-vacuum-stuck"},
		{cases.Test{Kind: "fan", Commanded: yes, Runs: yes}, "fan-always-running", "fan-not-running"},
	} {
		c := &cases.Case{Tests: []cases.Test{tt.test}}
		word, unseen := evidence.OutcomeAndUnseen(c, &c.Tests[0])
		f, ok := shipped(t).Test(tt.test.Kind, word, unseen...)
		if open, shown := lift(f, tt.open), lift(f, tt.shown); !ok || open < 0.9 || shown > 0.5 {
			t.Errorf("%+v: %s %.2f, want about 1; %s %.2f, want little", tt.test, tt.open, open, tt.shown, shown)
		}
	}
}
