package evidence_test

import (
	"regexp"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

func sum(t *testing.T, c *cases.Case, test cases.Test, name string) string {
	t.Helper()
	for _, s := range evidence.Workshop(c, &test).Sums {
		if strings.HasPrefix(s.Name.String(), name) {
			return s.Value.String()
		}
	}
	return ""
}

// Ideal gas at constant volume: 201.325 kPa absolute at 313.15 K is 187.18 kPa
// at 291.15 K, 14.1 kPa less; and the other way round as much more.
func TestPressureSums(t *testing.T) {
	cools := cases.Test{Kind: "pressure-hold", StartKPa: kPa(100), EndKPa: kPa(80), Minutes: casetest.P(5.0), StartC: degC(40), EndC: degC(18)}
	warms := cases.Test{Kind: "pressure-hold", StartKPa: kPa(85.86), EndKPa: kPa(100), Minutes: casetest.P(5.0), StartC: degC(18), EndC: degC(40)}
	c := &cases.Case{}
	for _, tt := range []struct {
		test       cases.Test
		name, want string
	}{
		{cools, "Fell", "20 kPa"}, {cools, "Of it by cooling", "14.1 kPa"}, {cools, "Lost", "5.9 kPa"}, {cools, "Leak rate", "1.17 kPa per minute"},
		{warms, "Hidden", "14.1 kPa"}, {warms, "Lost", "0 kPa"},
	} {
		if got := sum(t, c, tt.test, tt.name); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
	warms.EndKPa = kPa(86) // stands still while it should rise: it leaks
	if got := evidence.Outcome(c, &warms); got != "fails" {
		t.Errorf("a gauge that stands while its air warms by 22 K: %q", got)
	}
}

// EGF50 and EGB50 (published, M20): half and half freezes at -37 °C and boils
// at 108 °C in open air. The tables of inhibited glycol that are shipped keep
// within 1 K of it.
func TestCoolantSums(t *testing.T) {
	c := &cases.Case{Loop: cases.Loop{CapKPa: kPa(103.421), Coolant: cases.Coolant{Base: cases.EthyleneGlycol}}}
	half := cases.Test{Kind: "coolant", VolumePercent: casetest.P(50.0)}
	if got := sum(t, c, half, "Freezes"); got != "-37 °C" && got != "-36 °C" {
		t.Errorf("half and half freezes at %s", got)
	}
	if got := sum(t, c, half, "Boils at, cap off"); got != "108 °C" && got != "109 °C" && got != "107 °C" {
		t.Errorf("half and half boils at %s", got)
	}
	if got := sum(t, c, half, "Boils at, under"); got < "127 °C" || got > "132 °C" {
		t.Errorf("under 15 psi it boils at %s", got)
	}
	if got := sum(t, c, cases.Test{Kind: "coolant", FreezeC: degC(-24)}, "Strength"); got < "38 %" || got > "42 %" { // EGF40
		t.Errorf("-24 °C is a strength of %s", got)
	}
}

// row is a thermostat of the published bench tables: it starts and is full at
// those temperatures and is looked at every 2 K, warming and cooling with a lag
// of 5 K.
func row(rated, opens, full, mm float64) cases.Test {
	test := cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(rated), RatedLiftMM: &mm}
	for _, heating := range []bool{true, false} {
		lag := 5.0
		if heating {
			lag = 0
		}
		for w := opens - 12; w <= full+4; w += 2 {
			lift := mm * min(max((w+lag-opens)/(full-opens), 0), 1)
			test.Points = append(test.Points, cases.BenchPoint{WaterC: degC(w), LiftMM: &lift, Heating: casetest.P(heating)})
		}
	}
	return test
}

// Published limits (5.9 of the trade's tests: M2, M16, M3 to M7, V1 to V4; TH1
// to TH3): thermostats at both ends of what their makers allow pass, and fail
// 4 K further out.
func TestPublishedThermostatsPass(t *testing.T) {
	for _, p := range []struct{ rated, low, high, full, mm float64 }{
		{82, 79, 85, 94, 8}, {83.5, 82, 85, 93.5, 8}, {76.5, 75, 78, 88.5, 8}, {72.2, 72.2, 72.2, 81.1, 8}, {81, 79, 83, 96, 8},
		{77, 77, 77, 85, 8}, {82, 82, 82, 88, 8}, {78, 76, 80, 90, 8}, {82, 80, 84, 95, 10}, {76, 74, 78, 90, 10}, {50, 48, 52, 63, 6},
	} {
		for opens, want := range map[float64]string{p.low: "pass", p.high: "pass", p.rated - 7: "early", p.rated + 7: "late"} {
			test := row(p.rated, opens, opens+p.full-p.rated, p.mm)
			if got := evidence.Outcome(&cases.Case{}, &test); got != want {
				t.Errorf("rated %g, opens at %g °C: %q, want %q", p.rated, opens, got, want)
			}
			if got := sum(t, &cases.Case{}, test, "Hysteresis"); got < "4.5 K" || got > "5.5 K" {
				t.Errorf("rated %g: hysteresis %s, want 5 K", p.rated, got)
			}
		}
	}
}

// One slip of the pen condemns no thermostat; TH4 (published, V2, V3) does.
func TestASlipAndAValveThatStaysOpen(t *testing.T) {
	test := row(82, 82, 95, 8)
	test.Points[2].LiftMM = casetest.P(3.0)
	if got := evidence.Outcome(&cases.Case{}, &test); got != "pass" {
		t.Errorf("one slip makes it %q", got)
	}
	test = cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(82.2)} // one of the two in the middle is a slip
	for _, p := range [][2]float64{{60, 0}, {71.1, 0}, {76.7, 0}, {80, 3}, {84.4, 2}, {87.8, 5}, {96.1, 9}} {
		test.Points = append(test.Points, cases.BenchPoint{WaterC: degC(p[0]), LiftMM: casetest.P(p[1])})
	}
	if got := evidence.Outcome(&cases.Case{}, &test); got != "pass" {
		t.Errorf("shut at 76.7 °C with a tolerance that ends at 79.2 makes it %q", got)
	}
	test = row(82, 82, 95, 8)
	test.Points = append(test.Points, cases.BenchPoint{WaterC: degC(38), LiftMM: casetest.P(1.5), Heating: casetest.P(false)})
	if got := evidence.Workshop(&cases.Case{}, &test); got.Outcome != "open" || !strings.Contains(got.Flags[0].Text.String(), "38 °C") {
		t.Errorf("open at 38 °C after cooling: %+v", got)
	}
}

// The first reading is often of water that is warm already: one that is open by
// then opened under its mark (TH1), if it lifts on at once; one that waits for
// its mark (82 °C, full 12 K above: M2, published) doesn't shut. In cold water it
// ought to be shut whatever its mark (TH4).
func TestOpenBeforeTheFirstReading(t *testing.T) {
	for _, tt := range []struct {
		name               string
		opens, least, from float64
		want               string
	}{
		{"a mark too cold", 62, 0, 68, "early"},
		{"ajar", 82, 1.5, 68, "open"},
		{"wide open", 82, 8, 68, "open"},
		{"ajar, and early as well, in cold water", 62, 1.5, 20, "open"},
		{"ajar, and early as well", 70, 1.5, 46, "open"},
	} {
		test := cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(82)}
		for w := tt.from; w <= 98; w += 3 {
			mm := max(tt.least, 8*min(max((w-tt.opens)/12, 0), 1))
			test.Points = append(test.Points, cases.BenchPoint{WaterC: degC(w), LiftMM: &mm})
		}
		if got := evidence.Outcome(&cases.Case{}, &test); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
	// Two wide steps of the water may show all of its lift, which no valve has straight to the end.
	test := cases.Test{Kind: "thermostat-bench", RatedOpensC: degC(86)}
	for i, mm := range []float64{4.9, 8.5, 9, 9, 9, 9, 9} {
		test.Points = append(test.Points, cases.BenchPoint{WaterC: degC(72 + 4*float64(i)), LiftMM: &mm})
	}
	if got := evidence.Outcome(&cases.Case{}, &test); got != "early" {
		t.Errorf("nearly open in the first water: %q, want early", got)
	}
}

// NTC20 to NTC100 (published, V16) as the reference; the sensor is NTC80's
// where the water has 70 °C.
func TestSensorSums(t *testing.T) {
	test := cases.Test{Kind: "sensor-resistance", Points: []cases.BenchPoint{{TempC: degC(70), Ohm: casetest.P(308.6)}, {TempC: degC(20), Ohm: casetest.P(9e4)}}}
	for _, p := range [][2]float64{{20, 2502}, {50, 806.9}, {80, 308.6}, {100, 175.7}} {
		test.Reference = append(test.Reference, cases.OhmPoint{TempC: degC(p[0]), Ohm: casetest.P(p[1])})
	}
	c := &cases.Case{}
	if got := sum(t, c, test, "At 70"); !regexp.MustCompile(`^\+(9\.[89]|10(\.[12])?) K$`).MatchString(got) {
		t.Errorf("at 70 °C it is off by %s, want +10 K", got)
	}
	if got := sum(t, c, test, "At 20"); got != "outside the reference" {
		t.Errorf("at 20 °C: %q", got)
	}
	test.Points = test.Points[:1]
	if got := sum(t, c, test, "Error at working temperature, 88"); !regexp.MustCompile(`^\+1[01](\.\d)? K$`).MatchString(got) {
		t.Errorf("at work it is off by %s", got)
	}
	test.Reference[1].Ohm = casetest.P(8069.0)
	if got := sum(t, c, test, "Reference"); !strings.Contains(got, "slip") {
		t.Errorf("a nought too many in the reference: %q", got)
	}
}

// DT14 (common practice) and M17, V22 (published). F06: no air, no cooling.
func TestFaceTellsTubesFromFins(t *testing.T) {
	tubes := cases.Test{Kind: "core-scan", ShownC: [][]float64{{88, 60, 88, 87}, {80, 48, 80, 80}, {72, 42, 73, 72}, {64, 36, 65, 64}}}
	fins := cases.Test{Kind: "core-scan", ShownC: [][]float64{{88, 88, 88, 87}, {80, 80, 80, 80}, {72, 85, 73, 72}, {64, 65, 65, 64}}}
	got := evidence.Workshop(&cases.Case{}, &tubes)
	if got.Outcome != "patch" || !strings.Contains(got.Flags[0].Text.String(), "plugged") || sum(t, &cases.Case{}, tubes, "Cold area") != "25 % of 16 places" {
		t.Errorf("tubes: %+v", got)
	}
	got = evidence.Workshop(&cases.Case{}, &fins)
	if got.Outcome != "hot-patch" || len(got.Flags) != 1 || got.Flags[0].ID != "core-fins" {
		t.Errorf("fins: %+v", got)
	}
}

// Each check has its limits with a class or a source that is known, and says
// what a pass leaves open.
func TestEveryCheckHasItsGuide(t *testing.T) {
	for _, kind := range cases.Words[cases.TestKind]() {
		g := evidence.GuideTo(kind, "")
		accepts, rest := g.Accepts.String(), g.NotProven.String()
		if !strings.Contains(accepts, "published") && !strings.Contains(accepts, "common practice") || strings.ContainsAny(accepts+rest, "{}") {
			t.Errorf("%s: %s %s", kind, accepts, rest)
		}
		said(t, string(kind), g.Accepts, g.NotProven)
	}
}

// No thermostat is rated at 190 °C (a coolant's most is 150 °C, judgement): by such a mark one that opens at 82 °C would be
// early, and by the findings, which don't use it, it isn't. A sensor's error is told where the loop works.
func TestARatingThatNoThermostatHasIsNotUsed(t *testing.T) {
	c := &cases.Case{Loop: cases.Loop{ThermostatOpensC: degC(190)}}
	bench := row(82, 82, 94, 8)
	for _, marked := range []*diagram.Celsius{nil, degC(190)} {
		bench.RatedOpensC = marked
		if got := evidence.Outcome(c, &bench); got != "" {
			t.Errorf("marked %v in a case of 190 °C: %q", marked, got)
		}
	}
	sensor := cases.Test{Kind: "sensor-resistance", Points: []cases.BenchPoint{{TempC: degC(80), Ohm: casetest.P(308.6)}},
		Reference: []cases.OhmPoint{{TempC: degC(20), Ohm: casetest.P(2502.0)}, {TempC: degC(50), Ohm: casetest.P(806.9)}, {TempC: degC(80), Ohm: casetest.P(308.6)}, {TempC: degC(100), Ohm: casetest.P(175.7)}}} // V16, published
	if got := sum(t, c, sensor, "Error at working temperature, 88 °C"); got == "" {
		t.Errorf("no error at the usual 88 °C: %+v", evidence.Workshop(c, &sensor).Sums)
	}
}
