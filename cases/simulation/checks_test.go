package simulation_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/simulation"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// outcomes are how the case's checks come out, by their kinds.
func outcomes(c *cases.Case) map[cases.TestKind]string {
	out := map[cases.TestKind]string{}
	for i := range c.Tests {
		out[c.Tests[i].Kind] = evidence.Outcome(c, &c.Tests[i])
	}
	return out
}

// Each part's own check finds it at fault, and a sound car passes them all: common practice, with the bounds of the
// checks, which are published (testdata/trade/numbers.csv).
func TestTheCheckOfThePartAtFaultFindsIt(t *testing.T) {
	for cause, want := range map[cases.Cause]map[cases.TestKind]string{
		"none":                    {},
		"thermostat-stuck-open":   {cases.BenchTest: "open"},
		"thermostat-stuck-closed": {cases.BenchTest: "shut"},
		"thermostat-late":         {cases.BenchTest: "late or shut"}, // it may let go over boiling water only
		"thermostat-early":        {cases.BenchTest: "early"},
		"radiator-restricted":     {cases.CoreTest: "patch"},
		"fan-not-running":         {cases.FanTest: "dead"},
		"fan-always-running":      {cases.FanTest: "runs"},
		"lower-hose-collapse":     {cases.HoseTest: "collapses"},
		"heater-core-restricted":  {cases.HeaterTest: "weak"},
		"heater-valve-shut":       {cases.HeaterTest: "none"},
		"combustion-leak":         {cases.GasTest: "positive", cases.BubblesTest: "seen", cases.PressureTest: "fails"},
		"cap-weak":                {cases.CapTest: "weak"},
		"cap-vacuum-stuck":        {cases.CapTest: "vacuum-stuck", cases.LevelTest: "low"}, // it falls with each cycle (F24 of testdata/trade/signatures.csv)
		"external-leak":           {cases.PressureTest: "fails", cases.LevelTest: "low"},
		"sensor-reads-low":        {cases.SensorTest: "low"},
		"sensor-reads-high":       {cases.SensorTest: "high"},
		"coolant-mix-wrong":       {cases.CoolantTest: "fouled"},
		"coolant-low-air":         {cases.LevelTest: "low"},
		"heater-air-side":         {cases.HeaterTest: evidence.Pass},
	} {
		for seed := int64(1); seed <= 6; seed++ {
			c := car(cause)
			c.Seed = seed
			k := simulated(t, c)
			got := outcomes(&k)
			if len(got) != len(cases.Words[cases.TestKind]()) {
				t.Fatalf("%s: %d kinds of checks", cause, len(got))
			}
			for kind, outcome := range want {
				if got[kind] == "" || !slices.Contains(strings.Split(outcome, " or "), got[kind]) {
					t.Errorf("%s, seed %d: the %s comes out as %q, want %q", cause, seed, kind, got[kind], outcome)
				}
			}
			for kind, outcome := range got {
				if cause == cases.Healthy && !evidence.Passed(outcome) {
					t.Errorf("a sound car, seed %d: the %s comes out as %q", seed, kind, outcome)
				}
			}
		}
	}
}

// The symptoms are those of the trade's table (testdata/trade/signatures.csv, F00, F01, F02, F04, F07, F12, F13, F23); a thermostat's code is due more
// than 11 K under its rating (REG1, published), of overheating when it does.
func TestTheDriverTellsWhatTheFaultDoes(t *testing.T) {
	for _, tt := range []struct {
		cause    cases.Cause
		ambientC diagram.Celsius
		feels    cases.Symptom // "" nothing at all
		code     string
	}{
		{"none", 5, "", ""},
		{"none", 35, "", ""},
		{"thermostat-stuck-open", 5, "slow-warm-up", "P0128"},
		{"thermostat-stuck-closed", 20, "overheats-always", "P0217"},
		{"thermostat-early", 5, "gauge-low", "P0128"},
		{"fan-not-running", 32, "overheats-idle", "P0480"},
		{"fan-always-running", 15, "fan-always-on", "P0483"},
		{"sensor-reads-low", 15, "gauge-low", "P0128"},
		{"heater-air-side", 5, "cabin-heat-poor", ""},
		{"heater-valve-shut", 5, "cabin-heat-poor", ""},
		{"external-leak", 20, "coolant-loss", ""},
	} {
		c := car(tt.cause)
		c.AmbientC = tt.ambientC
		k := simulated(t, c)
		var codes []string
		for _, code := range k.Codes {
			codes = append(codes, code.Code)
		}
		if felt := k.Complaint.Symptoms; tt.feels == "" && len(felt) > 0 || tt.feels != "" && !slices.Contains(felt, tt.feels) {
			t.Errorf("%s at %g °C: %v, want %q", tt.cause, float64(tt.ambientC), felt, tt.feels)
		}
		if tt.code == "" && len(codes) > 0 || tt.code != "" && !slices.Contains(codes, tt.code) {
			t.Errorf("%s at %g °C: codes %v, want %q", tt.cause, float64(tt.ambientC), codes, tt.code)
		}
	}
}

// An engine that boils throws coolant out: F02 of testdata/trade/signatures.csv loses it, a sound one that idles in the same
// heat doesn't.
func TestABoilingEngineLosesCoolant(t *testing.T) {
	for cause, loses := range map[cases.Cause]bool{"thermostat-stuck-closed": true, "none": false} {
		c := car(cause)
		c.AmbientC = 35
		k := simulated(t, c)
		at := slices.IndexFunc(k.Tests, func(t cases.Test) bool { return t.Kind == cases.LevelTest })
		if low, told := k.Tests[at].State == "low", slices.Contains(k.Complaint.Symptoms, "coolant-loss"); low != loses || told != loses {
			t.Errorf("%s: the level is %q, the driver tells %v", cause, k.Tests[at].State, k.Complaint.Symptoms)
		}
	}
}

// The log begins with the cold car and holds the whole way; its rows are what the rounds' scan tool shows, to the
// whole degree.
func TestTheLogIsOfTheSameWay(t *testing.T) {
	k := simulated(t, car("none"))
	log := k.Logs[0]
	german, err := say.In(say.DE, units.Metric())
	if err != nil {
		t.Fatal(err)
	}
	if log.TimeS[0] != 0 || log.EctC[0] != 15 || !slices.IsSorted(log.TimeS) {
		t.Errorf("it begins at %g s with %g °C", log.TimeS[0], log.EctC[0])
	}
	whole := 0.0
	for _, s := range simulation.Usual() {
		whole += s.Minutes * 60
	}
	if last := log.TimeS[len(log.TimeS)-1]; math.Abs(last-whole) > 15 {
		t.Errorf("it ends after %g s of %g", last, whole)
	}
	for _, r := range k.Rounds {
		if german.Say(r.Title()) == r.Label {
			t.Errorf("%q has no name in other languages", r.Label)
		}
		i, _ := slices.BinarySearch(log.TimeS, *r.MinutesSinceStart*60-8)
		if math.Abs(log.EctC[i]-float64(*r.EctC)) > 2 {
			t.Errorf("%s: the round has %g °C, the log %g", r.Label, float64(*r.EctC), log.EctC[i])
		}
	}
}

// A trainee sees the id as a file's name: it mustn't say what is at fault.
func TestTheNameDoesNotGiveTheAnswerAway(t *testing.T) {
	k := simulated(t, car("pump-weak"))
	for _, text := range []string{k.ID, k.Title, strings.Join(k.Tags, " "), k.Complaint.Text} {
		if strings.Contains(text, "pump") {
			t.Errorf("%q says it", text)
		}
	}
}

// A sound engine stands in traffic where its fan starts, and on a hot rating that is 113 °C and more: no driver
// complains of it, and no control stores a code under it (common practice, no source). A heater that gives nothing
// heats no engine above that (F13 of testdata/trade/signatures.csv: the engine is normal).
func TestNoEngineIsTooHotBeforeItsFanHasBegun(t *testing.T) {
	for seed := int64(1); seed <= 6; seed++ {
		c := car("heater-valve-shut")
		c.Layout, c.AmbientC, c.Severity, c.Seed = "heated-thermostat", 35, 0.2, seed
		k := simulated(t, c)
		if felt := k.Complaint.Symptoms; len(k.Codes) > 0 || !slices.Equal(felt, []cases.Symptom{"cabin-heat-poor"}) {
			t.Errorf("seed %d: %v, codes %v, of a heater that is shut", seed, felt, k.Codes)
		}
	}
}

// A valve that lets go late makes the needle overshoot on the first warm-up and drop (F03 of
// testdata/trade/signatures.csv); an engine that idles cool for half an hour after it doesn't overheat standing.
func TestALateValveMakesTheNeedleSwing(t *testing.T) {
	k := simulated(t, car("thermostat-late"))
	if felt := k.Complaint.Symptoms; !slices.Equal(felt, []cases.Symptom{"gauge-swings"}) {
		t.Errorf("%v, want that the gauge swings", felt)
	}
}

// Heat that comes and goes is at times a sound car's: air in the core (F09). A cabin that is always colder, now by
// somewhat more and now by somewhat less, has poor heat (F12, F25 of testdata/trade/signatures.csv).
func TestHeatThatIsAlwaysPoorDoesNotComeAndGo(t *testing.T) {
	for cause, severity := range map[cases.Cause]float64{"heater-core-restricted": 1, "heater-air-side": 0.2} {
		c := car(cause)
		c.AmbientC, c.Severity = 5, severity
		for seed := int64(1); seed <= 6; seed++ {
			c.Seed = seed
			if felt := simulated(t, c).Complaint.Symptoms; slices.Contains(felt, "cabin-heat-comes-and-goes") {
				t.Errorf("%s, seed %d: %v", cause, seed, felt)
			}
		}
	}
}

// A strip, a gauge and a gun show a digit or two behind the point, and so does the file.
func TestAnInstrumentShowsFewDigits(t *testing.T) {
	for seed := int64(1); seed <= 6; seed++ {
		c := car("none")
		c.Seed = seed
		k := simulated(t, c)
		for _, test := range k.Tests {
			if ph := test.PH; ph != nil && len(strconv.FormatFloat(*ph, 'g', -1, 64)) > 3 {
				t.Errorf("seed %d: pH %g", seed, *ph)
			}
		}
	}
}
