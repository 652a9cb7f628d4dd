package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
)

// The limits are those of TestWorkshopChecks, from testdata/trade/numbers.csv;
// the ids stand beside each check.
func TestOutcome(t *testing.T) {
	yes, no := casetest.P(true), casetest.P(false)
	percent := casetest.P[float64]
	for _, tt := range []struct {
		name string
		test cases.Test
		want string
	}{
		{"PR2 published: holds", cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(99)}, "pass"},
		{"PR1 published: under 2 psi is open", cases.Test{Kind: "pressure-hold", StartKPa: kPa(104), EndKPa: kPa(94)}, "slight"},
		{"PR1 published: more than 2 psi fails", cases.Test{Kind: "pressure-hold", StartKPa: kPa(104), EndKPa: kPa(89)}, "fails"},
		{"less than PR1 can't fail", cases.Test{Kind: "pressure-hold", StartKPa: kPa(0), EndKPa: kPa(0)}, ""},
		{"one that rose hides a leak", cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(106)}, ""},
		{"no end noted", cases.Test{Kind: "pressure-hold", StartKPa: kPa(104)}, ""},
		{"PR8 published: within 10 %", cases.Test{Kind: "cap", RatedKPa: kPa(100), OpensKPa: kPa(92), Holds: yes}, "pass"},
		{"PR8 published: 20 % under", cases.Test{Kind: "cap", RatedKPa: kPa(100), OpensKPa: kPa(80)}, "weak"},
		{"PR8 published: 20 % over", cases.Test{Kind: "cap", RatedKPa: kPa(100), OpensKPa: kPa(120)}, "late"},
		{"PR10 published", cases.Test{Kind: "cap", Holds: yes, VacuumValveOK: no}, "vacuum-stuck"},
		{"weak decides more than its vacuum valve", cases.Test{Kind: "cap", Holds: no, VacuumValveOK: no}, "weak"},
		{"opens, but what is it rated?", cases.Test{Kind: "cap", OpensKPa: kPa(80)}, ""},
		{"a mark of nothing", cases.Test{Kind: "cap", RatedKPa: kPa(0), OpensKPa: kPa(80)}, ""},
		{"published, M16, T23", cases.Test{Kind: "combustion-gas", Result: "positive"}, "positive"},
		{"published, M16, T23", cases.Test{Kind: "combustion-gas", Result: "negative"}, "pass"},
		{"not read", cases.Test{Kind: "combustion-gas"}, ""},
		{"CO1 published", cases.Test{Kind: "coolant", VolumePercent: percent(50), Looks: "clear"}, "pass"},
		{"CO1 published: weak", cases.Test{Kind: "coolant", VolumePercent: percent(36)}, "too-weak"},
		{"CO1 published: strong", cases.Test{Kind: "coolant", VolumePercent: percent(64)}, "too-strong"},
		{"CO2 published: no inhibitor left", cases.Test{Kind: "coolant", VolumePercent: percent(30)}, "far-too-weak"},
		{"CO3 published: past what is useful", cases.Test{Kind: "coolant", VolumePercent: percent(75)}, "far-too-strong"},
		{"EGF30 published: weak", cases.Test{Kind: "coolant", FreezeC: degC(-15)}, "far-too-weak"},
		{"M16 published", cases.Test{Kind: "coolant", VolumePercent: percent(50), Looks: "oily"}, "fouled"},
		{"M16 published", cases.Test{Kind: "coolant", Looks: "rusty", PH: percent(6.8)}, "rusty"},
		{"CO8 common practice", cases.Test{Kind: "coolant", PH: percent(6.8), StrayV: percent(0.45)}, "ph-out"},
		{"SV5 common practice", cases.Test{Kind: "coolant", StrayV: percent(0.45)}, "stray"},
		{"SV5 common practice: a meter's leads either way round", cases.Test{Kind: "coolant", VolumePercent: percent(50), StrayV: percent(-0.45)}, "stray"},
		{"clear coolant may be of any strength", cases.Test{Kind: "coolant", Looks: "clear", PH: percent(8.5)}, ""},
		{"commanded, runs", cases.Test{Kind: "fan", Commanded: yes, Runs: yes}, "pass"},
		{"commanded, stands", cases.Test{Kind: "fan", Commanded: yes, Runs: no}, "dead"},
		{"not commanded, runs", cases.Test{Kind: "fan", Commanded: no, Runs: yes}, "runs"},
		{"not commanded, stands: nothing was asked of it", cases.Test{Kind: "fan", Commanded: no, Runs: no}, ""},
		{"FN1 published: by 98 °C", cases.Test{Kind: "fan", StartsC: degC(97)}, "pass"},
		{"FN1 published: late", cases.Test{Kind: "fan", StartsC: degC(106)}, "late"},
		{"FN7 published: it has let go by then", cases.Test{Kind: "fan", StartsC: degC(20.5)}, "runs"},
		{"FN6 published: a viscous one takes hold", cases.Test{Kind: "fan", StartsC: degC(74)}, "pass"},
		{"common practice", cases.Test{Kind: "level", State: "full"}, "pass"},
		{"common practice", cases.Test{Kind: "level", State: "low"}, "low"},
		{"common practice", cases.Test{Kind: "level", State: "empty"}, "empty"},
		{"common practice", cases.Test{Kind: "pump-drive", BeltOK: yes, Play: no, Weep: no}, "pass"},
		{"common practice", cases.Test{Kind: "pump-drive", BeltOK: no, Weep: yes}, "belt"},
		{"common practice", cases.Test{Kind: "pump-drive", Play: yes}, "play"},
		{"V22 published", cases.Test{Kind: "pump-drive", Weep: yes}, "weeps"},
		{"M17 published", cases.Test{Kind: "hose-look", LowerCollapses: yes}, "collapses"},
		{"M17 published", cases.Test{Kind: "hose-look", LowerCollapses: no}, "pass"},
		{"V22, V34 published", cases.Test{Kind: "bubbles", Seen: yes}, "seen"},
		{"V22, V34 published", cases.Test{Kind: "bubbles", Seen: no}, "pass"},
		{"common practice", cases.Test{Kind: "heater-flow", Flows: "weak"}, "weak"},
		{"common practice", cases.Test{Kind: "heater-flow", Flows: "none"}, "none"},
		{"common practice", cases.Test{Kind: "heater-flow", Flows: "full"}, "pass"},
		{"M17 published: even", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 84, 85}, {70, 71, 70}, {55, 55, 56}}}, "pass"},
		{"DT14 common practice", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 84, 85}, {70, 50, 70}, {55, 55, 56}}}, "patch"},
		{"F06 common practice: no air takes its heat", cases.Test{Kind: "core-scan", ShownC: [][]float64{{98, 98}, {96, 95}, {94, 94}}}, "hot-through"},
		{"F02 and DT7 common practice: nothing comes to it", cases.Test{Kind: "core-scan", ShownC: [][]float64{{27, 26}, {24, 24}}}, "cold-through"},
		{"one row shows no patch", cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 70, 55}}}, ""},
		{"nothing noted", cases.Test{Kind: "pump-drive"}, ""},
		{"whether it holds isn't noted", cases.Test{Kind: "cap", RatedKPa: kPa(100), OpensKPa: kPa(100)}, "pass-in-part"},
		{"only its vacuum valve", cases.Test{Kind: "cap", VacuumValveOK: yes}, "pass-in-part"},
		{"only its belt", cases.Test{Kind: "pump-drive", BeltOK: yes}, "pass-in-part"},
		{"not looked at", cases.Test{Kind: "coolant", VolumePercent: percent(50)}, "pass-in-part"},
		{"not looked at, too weak", cases.Test{Kind: "coolant", VolumePercent: percent(35)}, "too-weak"},
		{"no such check", cases.Test{Kind: "weather"}, ""},
	} {
		c := &cases.Case{Site: cases.Site{AmbientC: degC(20)}, Tests: []cases.Test{tt.test}}
		if got := evidence.Outcome(c, &c.Tests[0]); got != tt.want {
			t.Errorf("%s: Outcome(%+v) = %q, want %q", tt.name, tt.test, got, tt.want)
		}
	}
}

// V1 to V3 and M2 (published), as TestThermostatInHeatedWater.
func TestOutcomeInHeatedWater(t *testing.T) {
	for _, tt := range []struct {
		want   string
		firstC float64
		liftMM []float64
	}{
		{"pass", 70, []float64{0, 0, 0, 1, 5, 9}},
		{"open", 70, []float64{3, 3, 4, 5, 6, 9}},
		{"early", 70, []float64{0, 1, 3, 5, 7, 9}},
		{"late", 72, []float64{0, 0, 0, 0, 1, 4}},
		{"shut", 70, []float64{0, 0, 0, 0, 0, 0}},
		{"small-lift", 70, []float64{0, 0, 0, 1, 3, 4}},
		{"", 70, []float64{0, 0, 0}},    // not hot enough to tell
		{"", 85, []float64{2, 6, 9, 9}}, // never seen shut
	} {
		test := cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(82)}
		for i, mm := range tt.liftMM {
			test.Points = append(test.Points, cases.BenchPoint{WaterC: degC(tt.firstC + 5*float64(i)), LiftMM: casetest.P(mm)})
		}
		if got := evidence.Outcome(&cases.Case{}, &test); got != tt.want {
			t.Errorf("lift %v from %g °C on: %q, want %q", tt.liftMM, tt.firstC, got, tt.want)
		}
		// Water that gets hotter all the way was not cooled, whatever the points say.
		for i := range test.Points {
			test.Points[i].Heating = casetest.P(false)
		}
		if got := evidence.Outcome(&cases.Case{}, &test); got != tt.want {
			t.Errorf("lift %v from %g °C on, said to be of the way down: %q, want %q", tt.liftMM, tt.firstC, got, tt.want)
		}
	}
}

// One maker's curve, NTC20 to NTC100 (published, V16); DT15 (common practice).
func TestOutcomeOfASensor(t *testing.T) {
	curve := []cases.OhmPoint{{TempC: degC(20), Ohm: casetest.P(2502.0)}, {TempC: degC(50), Ohm: casetest.P(806.9)},
		{TempC: degC(80), Ohm: casetest.P(308.6)}, {TempC: degC(100), Ohm: casetest.P(175.7)}}
	for _, tt := range []struct {
		tempC, ohm float64
		want       string
	}{
		{80, 308.6, "pass"}, {80, 806.9, "low"}, {50, 308.6, "high"}, {20, 50000, ""},
	} {
		test := cases.Test{Kind: "sensor-resistance", Reference: curve, Points: []cases.BenchPoint{{TempC: degC(tt.tempC), Ohm: casetest.P(tt.ohm)}}}
		if got := evidence.Outcome(&cases.Case{}, &test); got != tt.want {
			t.Errorf("%g Ω at %g °C: %q, want %q", tt.ohm, tt.tempC, got, tt.want)
		}
	}
}

// A sensor that breaks, or shorts, as it gets warm, passes cold; a cut circuit reads as the coldest and a short one as the
// hottest (SN1, SN2, published, V35), beyond any reference (V16, published).
func TestASensorThatFailsWarmIsNoPass(t *testing.T) {
	curve := []cases.OhmPoint{{TempC: degC(20), Ohm: casetest.P(2502.0)}, {TempC: degC(50), Ohm: casetest.P(806.9)},
		{TempC: degC(80), Ohm: casetest.P(308.6)}, {TempC: degC(100), Ohm: casetest.P(175.7)}}
	for ohm, want := range map[float64]string{1e6: "low", 0: "high", 308.6: "pass"} {
		test := cases.Test{Kind: "sensor-resistance", Reference: curve, Points: []cases.BenchPoint{
			{TempC: degC(20), Ohm: casetest.P(2502.0)}, {TempC: degC(80), Ohm: casetest.P(ohm)}}}
		got := evidence.Workshop(&cases.Case{}, &test)
		if got.Outcome != want {
			t.Errorf("%g Ω at 80 °C: %q, want %q", ohm, got.Outcome, want)
		}
		if want != "pass" && (got.Flags[0].Severity != evidence.Act || !strings.Contains(got.Flags[0].Text.String(), "at least")) {
			t.Errorf("%g Ω at 80 °C: %s, %s", ohm, got.Flags[0].Severity, got.Flags[0].Text)
		}
	}
}

// CO1 (published, V32). A measured strength makes the stated one void.
func TestFillOutcome(t *testing.T) {
	stated := func(percent float64, tests ...cases.Test) *cases.Case {
		return &cases.Case{Loop: cases.Loop{Coolant: cases.Coolant{VolumePercent: &percent}}, Tests: tests}
	}
	for _, tt := range []struct {
		c    *cases.Case
		want string
	}{
		{stated(50), "pass"}, {stated(80), "far-too-strong"}, {stated(15), "far-too-weak"},
		{&cases.Case{Loop: cases.Loop{Coolant: cases.Coolant{Base: cases.Water}}}, "far-too-weak"},
		{&cases.Case{}, ""},
		{stated(80, cases.Test{Kind: "coolant", VolumePercent: casetest.P(50.0)}), ""},
	} {
		if got := evidence.FillOutcome(tt.c); got != tt.want {
			t.Errorf("FillOutcome of %+v with %d tests = %q, want %q", tt.c.Loop.Coolant, len(tt.c.Tests), got, tt.want)
		}
	}
}

// A fan is late by what its thermostat holds: 98 °C is of a usual rating (FN1, published, V23), one that opens at 105 °C
// (TH6, published, T2) has the engine at more than that before it lets anything through.
func TestAFanIsLateByItsThermostat(t *testing.T) {
	for _, tt := range []struct {
		layout        string
		opens, starts float64
		want          string
	}{
		{"outlet-thermostat", 88, 110, "late"}, {"heated-thermostat", 105, 110, "pass"}, {"heated-thermostat", 105, 125, "late"},
	} {
		c := &cases.Case{Loop: cases.Loop{Layout: tt.layout, ThermostatOpensC: degC(tt.opens)}}
		if got := evidence.Outcome(c, &cases.Test{Kind: "fan", StartsC: degC(tt.starts)}); got != tt.want {
			t.Errorf("rated %g, the fan starts at %g °C: %q, want %q", tt.opens, tt.starts, got, tt.want)
		}
	}
}

// A face as cold as the air has nothing coming to it (F02, DT7, common practice), also where a round alone has the air.
func TestAColdFaceByTheRoundsAir(t *testing.T) {
	test := cases.Test{Kind: "core-scan", ShownC: [][]float64{{27, 26}, {24, 24}}}
	c := &cases.Case{Rounds: []cases.Round{{AmbientC: degC(20)}}}
	if got := evidence.Outcome(c, &test); got != "cold-through" {
		t.Errorf("24 to 27 °C in air of 20: %q", got)
	}
}
