package evidence_test

import (
	"encoding/json"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

func kPa(v float64) *diagram.KPa      { return casetest.P(diagram.KPa(v)) }
func degC(v float64) *diagram.Celsius { return casetest.P(diagram.Celsius(v)) }

// How much of a core's face is cold is counted: one place of nine, three of nine.
func TestTheColdShareIsSaid(t *testing.T) {
	for want, grid := range map[string][][]float64{
		"11 % of the face": {{85, 84, 85}, {70, 50, 70}, {55, 55, 56}},
		"33 % of the face": {{85, 55, 85}, {70, 40, 70}, {55, 25, 56}},
	} {
		check := evidence.Workshop(&cases.Case{}, &cases.Test{Kind: "core-scan", ShownC: grid})
		if len(check.Flags) != 1 || !strings.Contains(becauseOf(&check.Flags[0]), want) {
			t.Errorf("%v: %+v, want %s", grid, check.Flags, want)
		}
	}
}

// Limits of testdata/trade/numbers.csv; the ids stand beside each check.
func TestWorkshopChecks(t *testing.T) {
	yes, no := casetest.P(true), casetest.P(false)
	for _, tt := range []struct {
		name string
		test cases.Test
		want string // the flag, or ""
		how  evidence.Severity
	}{
		{"PR2 published: holds", cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(99)}, "", ""},
		{"PR1 published: under 2 psi is open", cases.Test{Kind: "pressure-hold", StartKPa: kPa(104), EndKPa: kPa(94)}, "pressure-drop", evidence.Look},
		{"PR1 published: more than 2 psi of 15 fails", cases.Test{Kind: "pressure-hold", StartKPa: kPa(104), EndKPa: kPa(89)}, "pressure-drop", evidence.Act},
		{"common practice, no source: a warm engine's pressure rises and hides a leak", cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(106)}, "pressure-rose", evidence.Look},
		{"physics: warming air adds 6 kPa", cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(106), StartC: degC(20), EndC: degC(29)}, "", ""},
		{"physics: cooling air takes 14 kPa by itself", cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(86), StartC: degC(40), EndC: degC(18)}, "", ""},
		{"PR8 published: within 10 %", cases.Test{Kind: "cap", RatedKPa: kPa(100), OpensKPa: kPa(92), Holds: yes}, "", ""},
		{"PR9 published: 7 psi cap at its low end", cases.Test{Kind: "cap", RatedKPa: kPa(48.3), OpensKPa: kPa(43.5)}, "", ""},
		{"PR8 published: too early", cases.Test{Kind: "cap", RatedKPa: kPa(100), OpensKPa: kPa(80)}, "cap-weak", evidence.Act},
		{"PR8 published: rating of the case", cases.Test{Kind: "cap", OpensKPa: kPa(80)}, "cap-weak", evidence.Act},
		{"PR7 published: doesn't hold", cases.Test{Kind: "cap", Holds: no}, "cap-weak", evidence.Act},
		{"PR10 published: vacuum valve", cases.Test{Kind: "cap", VacuumValveOK: no}, "cap-vacuum-stuck", evidence.Act},
		{"published, M16, T23", cases.Test{Kind: "combustion-gas", Result: "positive"}, "gas-positive", evidence.Act},
		{"one negative clears nothing", cases.Test{Kind: "combustion-gas", Result: "negative"}, "", ""},
		{"CO1 published", cases.Test{Kind: "coolant", VolumePercent: casetest.P(50.0)}, "", ""},
		{"CO1 published: weak", cases.Test{Kind: "coolant", VolumePercent: casetest.P(36.0)}, "coolant-too-weak", evidence.Look},
		{"CO2 published: no inhibitor left", cases.Test{Kind: "coolant", VolumePercent: casetest.P(30.0)}, "coolant-too-weak", evidence.Act},
		{"CO1 published: strong", cases.Test{Kind: "coolant", VolumePercent: casetest.P(64.0)}, "coolant-too-strong", evidence.Look},
		{"CO3 published: too strong", cases.Test{Kind: "coolant", VolumePercent: casetest.P(75.0)}, "coolant-too-strong", evidence.Act},
		{"EGF50 published", cases.Test{Kind: "coolant", FreezeC: degC(-37)}, "", ""},
		{"EGF40 published: just strong enough", cases.Test{Kind: "coolant", FreezeC: degC(-24)}, "", ""},
		{"EGF30 published: weak", cases.Test{Kind: "coolant", FreezeC: degC(-15)}, "coolant-too-weak", evidence.Act},
		{"CO4 published: -45 °C is kept", cases.Test{Kind: "coolant", FreezeC: degC(-45)}, "", ""},
		{"CO8 common practice", cases.Test{Kind: "coolant", PH: casetest.P(8.5)}, "", ""},
		{"CO8 common practice: acid", cases.Test{Kind: "coolant", PH: casetest.P(6.8)}, "coolant-ph", evidence.Look},
		{"SV5 common practice: good", cases.Test{Kind: "coolant", StrayV: casetest.P(0.05)}, "", ""},
		{"SV5 common practice: watch", cases.Test{Kind: "coolant", StrayV: casetest.P(0.2)}, "stray-voltage", evidence.Note},
		{"SV5 common practice: look", cases.Test{Kind: "coolant", StrayV: casetest.P(0.45)}, "stray-voltage", evidence.Look},
		{"published, M16", cases.Test{Kind: "coolant", Looks: "oily"}, "coolant-fouled", evidence.Act},
		{"FN1 published: by 98 °C", cases.Test{Kind: "fan", Commanded: yes, Runs: yes, StartsC: degC(97)}, "", ""},
		{"commanded, stands", cases.Test{Kind: "fan", Commanded: yes, Runs: no}, "fan-not-running", evidence.Act},
		{"not commanded, runs", cases.Test{Kind: "fan", Commanded: no, Runs: yes}, "fan-running", evidence.Look},
		{"FN1 published: late", cases.Test{Kind: "fan", StartsC: degC(106)}, "fan-late", evidence.Look},
		{"FN7 published: nothing needs it", cases.Test{Kind: "fan", StartsC: degC(20.5)}, "fan-running", evidence.Look},
		{"common practice", cases.Test{Kind: "level", State: "low"}, "level-low", evidence.Act},
		{"common practice", cases.Test{Kind: "level", State: "full"}, "", ""},
		{"common practice", cases.Test{Kind: "pump-drive", BeltOK: yes, Weep: yes}, "pump-drive", evidence.Act},
		{"published, M17", cases.Test{Kind: "hose-look", LowerCollapses: yes}, "lower-hose-collapse", evidence.Act},
		{"published, V22, V34", cases.Test{Kind: "bubbles", Seen: yes}, "bubbles", evidence.Look},
		{"common practice", cases.Test{Kind: "heater-flow", Flows: "weak"}, "heater-restricted", evidence.Act},
		{"published, M17: even from inlet to outlet", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 84, 85}, {70, 71, 70}, {55, 55, 56}}}, "", ""},
		{"published, M17: even, cross-flow", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 70, 55}, {84, 71, 55}}}, "", ""},
		{"DT14 common practice", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 84, 85}, {70, 61, 70}, {55, 55, 56}}}, "core-patch", evidence.Look},
		{"DT14 common practice", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 84, 85}, {70, 50, 70}, {55, 55, 56}}}, "core-patch", evidence.Act},
		{"no numbers", cases.Test{Kind: "core-scan"}, "", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := &cases.Case{Tests: []cases.Test{tt.test}, Loop: cases.Loop{CapKPa: kPa(110)}}
			f := analyst(t).Analyse(c)
			var got string
			var how evidence.Severity
			if len(f.Flags) > 0 {
				got, how = f.Flags[0].ID, f.Flags[0].Severity
			}
			if got != tt.want || how != tt.how || len(f.Flags) > 1 {
				t.Errorf("%+v: flags %+v, want %q (%s)", tt.test, f.Flags, tt.want, tt.how)
			}
		})
	}
}

// A test's flag tells the stage it was done in, and keeps it out of the document.
func TestFlagOfATestKnowsItsStage(t *testing.T) {
	for _, stage := range []cases.Stage{cases.BeforeRepair, cases.AfterRepair, ""} {
		c := toCase(healthy("outlet-thermostat", warm2500).open(110, 35))
		c.Tests = []cases.Test{{Kind: "cap", Stage: stage, Holds: casetest.P(false)}}
		f := analyst(t).Analyse(c)
		if flag := find(f, "cap-weak"); flag == nil || flag.Stage != stage {
			t.Errorf("tested %q: %+v", stage, flag)
		}
		if flag := find(f, "flow-restricted"); flag == nil || flag.Stage != "" {
			t.Errorf("a round's flag: %+v", flag)
		}
		if text, err := json.Marshal(evidence.Document(c, f).Flags); err != nil || strings.Contains(strings.ToLower(string(text)), `"stage"`) {
			t.Errorf("as JSON: %s, %v", text, err)
		}
	}
}

// Bench records after the texts V1 to V3 and M2 (published): first movement
// within 3 K of the mark, fully open about 13 K above, 8 mm of lift at least.
func TestThermostatInHeatedWater(t *testing.T) {
	bench := func(lift ...float64) cases.Test {
		t := cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(82)}
		for i, mm := range lift {
			t.Points = append(t.Points, cases.BenchPoint{WaterC: degC(70 + 5*float64(i)), LiftMM: casetest.P(mm), Heating: casetest.P(true)})
		}
		return t
	}
	benchAt := func(rated float64, points ...float64) cases.Test {
		t := cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(rated)}
		for i := 0; i < len(points); i += 2 {
			t.Points = append(t.Points, cases.BenchPoint{WaterC: degC(points[i]), LiftMM: &points[i+1], Heating: casetest.P(true)})
		}
		return t
	}
	for _, tt := range []struct {
		name string
		test cases.Test
		want bool
	}{
		{"well", bench(0, 0, 0, 1, 5, 9), false},
		{"stuck open", bench(3, 3, 4, 5, 6, 9), true},
		{"early", bench(0, 1, 3, 5, 7, 9), true},
		{"late", bench(0, 0, 0, 0, 1, 4), true},
		{"open by the tolerance's end", benchAt(82, 70, 0, 79, 1, 95, 9), true},
		{"shut", bench(0, 0, 0, 0, 0, 0), true},
		{"short lift", bench(0, 0, 0, 1, 3, 4), true},
		{"not hot enough to tell", bench(0, 0, 0), false},
	} {
		f := find(analyst(t).Analyse(&cases.Case{Tests: []cases.Test{tt.test}}), "thermostat-bench")
		if (f != nil) != tt.want {
			t.Errorf("%s: %+v", tt.name, f)
		}
	}
}

// The reference is one maker's curve, NTC20 to NTC100 (published, V16); limits
// DT15 and DT16 (common practice).
func TestSensorResistance(t *testing.T) {
	curve := []cases.OhmPoint{{TempC: degC(20), Ohm: casetest.P(2502.0)}, {TempC: degC(100), Ohm: casetest.P(175.7)},
		{TempC: degC(50), Ohm: casetest.P(806.9)}, {TempC: degC(80), Ohm: casetest.P(308.6)}}
	for _, tt := range []struct {
		tempC, ohm float64
		want       evidence.Severity
	}{
		{80, 308.6, ""},
		{90, 231.2, ""}, // NTC90, between two points of the reference
		{72, 308.6, evidence.Look},
		{50, 308.6, evidence.Act},
		{20, 50000, ""}, // off the curve: not guessed
	} {
		test := cases.Test{Kind: "sensor-resistance", Reference: curve, Points: []cases.BenchPoint{{TempC: degC(tt.tempC), Ohm: casetest.P(tt.ohm)}}}
		var got evidence.Severity
		if f := find(analyst(t).Analyse(&cases.Case{Tests: []cases.Test{test}}), "sensor-resistance"); f != nil {
			got = f.Severity
		}
		if got != tt.want {
			t.Errorf("%.0f Ω at %.0f °C: %q, want %q", tt.ohm, tt.tempC, got, tt.want)
		}
	}
}

// A pass is one of what was seen: a pan that ends before the thermostat's mark for fully open (TH2, TH3, published) leaves
// its lift open, and a hold under a minute (PR3, published) a leak.
func TestAPassInPartNamesWhatItLeavesOpen(t *testing.T) {
	pan := func(at ...[2]float64) cases.Test {
		out := cases.Test{Kind: cases.BenchTest, RatedOpensC: degC(82)}
		for _, p := range at {
			out.Points = append(out.Points, cases.BenchPoint{WaterC: degC(p[0]), LiftMM: &p[1], Heating: casetest.P(true)})
		}
		return out
	}
	minutes := casetest.P[float64]
	for _, tt := range []struct {
		name   string
		test   cases.Test
		want   string
		unseen string
	}{
		{"to the mark", pan([2]float64{70, 0}, [2]float64{80, 0}, [2]float64{86, 3}, [2]float64{96, 8.4}), evidence.Pass, ""},
		{"taken out early", pan([2]float64{70, 0}, [2]float64{80, 0}, [2]float64{86, 3}, [2]float64{88, 4.5}), evidence.PassInPart, "small-lift"},
		{"wide open before it", pan([2]float64{70, 0}, [2]float64{80, 0}, [2]float64{86, 4}, [2]float64{90, 8.2}), evidence.Pass, ""},
		{"a minute", cases.Test{Kind: cases.PressureTest, StartKPa: kPa(100), EndKPa: kPa(100), Minutes: minutes(1)}, evidence.Pass, ""},
		{"a quarter of one", cases.Test{Kind: cases.PressureTest, StartKPa: kPa(100), EndKPa: kPa(100), Minutes: minutes(0.25)}, evidence.PassInPart, "slight fails"},
		{"nobody noted how long", cases.Test{Kind: cases.PressureTest, StartKPa: kPa(100), EndKPa: kPa(100)}, evidence.Pass, ""},
	} {
		outcome, unseen := evidence.OutcomeAndUnseen(&cases.Case{}, &tt.test)
		if outcome != tt.want || strings.Join(unseen, " ") != tt.unseen {
			t.Errorf("%s: %q, open %q; want %q, %q", tt.name, outcome, unseen, tt.want, tt.unseen)
		}
	}
}
