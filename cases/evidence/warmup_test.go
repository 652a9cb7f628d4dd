package evidence_test

import (
	"encoding/json"
	"math"
	"sort"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// logged is a case with one invented log: a temperature for each 2 s at steady
// speeds, on a loop that opens at 88 °C, in air of 12 °C.
func logged(seconds int, kmh float64, ectC func(s float64) float64) *cases.Case {
	l := cases.Log{Name: "morning", Stage: cases.AfterRepair}
	for i := 0; i <= seconds; i += 2 {
		s := float64(i)
		l.TimeS, l.EctC = append(l.TimeS, s), append(l.EctC, math.Round(ectC(s)))
		l.EngineRPM, l.SpeedKmh = append(l.EngineRPM, 1600), append(l.SpeedKmh, kmh)
	}
	c := &cases.Case{ID: "invented", Logs: []cases.Log{l}}
	c.Loop = cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))}
	c.Site.AmbientC = casetest.P(diagram.Celsius(12))
	return c
}

// opens rises by 0.12 K/s to the knee and comes to its level within a minute.
func opens(kneeC, levelC float64) func(float64) float64 {
	return func(s float64) float64 {
		knee := (kneeC - 12) / 0.12
		if s < knee {
			return 12 + 0.12*s
		}
		return levelC + (kneeC-levelC)*max(0, 1-(s-knee)/60) + 0.5*math.Sin(s/30)
	}
}

// creeps comes smoothly to its level.
func creeps(levelC float64) func(float64) float64 {
	return func(s float64) float64 { return levelC - (levelC-12)*math.Exp(-s/300) }
}

// What the trade calls out of order in a warm-up (numbers.csv: REG1, REG10,
// TH8, TH9, TH11, TH12) is flagged, and a log within it isn't.
func TestLogFlags(t *testing.T) {
	after := func(roadS, townC, roadC float64) *cases.Case {
		c := logged(2400, 30, func(s float64) float64 {
			if s < roadS {
				return creeps(townC)(s)
			}
			return roadC + (townC-roadC)*math.Exp((roadS-s)/60)
		})
		for i, s := range c.Logs[0].TimeS {
			if s >= roadS {
				c.Logs[0].SpeedKmh[i] = 90
			}
		}
		return c
	}
	town := func(townC, roadC float64) *cases.Case { return after(1300, townC, roadC) }
	heated := func(c *cases.Case) *cases.Case {
		c.Loop.Layout, c.Loop.ThermostatOpensC = "heated-thermostat", casetest.P(diagram.Celsius(98))
		return c
	}
	spikes := logged(1500, 50, opens(91, 89))
	spikes.Logs[0].EctC[200], spikes.Logs[0].EctC[500] = -40, 140
	noPlugIn := logged(1500, 50, func(float64) float64 { return math.NaN() })
	for _, tt := range []struct {
		name     string
		c        *cases.Case
		pressing string
		note     string
	}{
		{"healthy: 3 K over its rating, then 1 K", logged(1500, 50, opens(91, 89)), "", ""},
		{"healthy: swings over by 7 K", logged(1500, 50, opens(95, 90)), "", ""},
		{"healthy: 4 K less on the road", town(90, 86), "", ""},
		{"healthy, begins warm", logged(1500, 50, func(s float64) float64 { return opens(91, 89)(s + 400) }), "", "no-cold-start"},
		{"ends early", logged(400, 50, opens(91, 89)), "", ""},
		{"opens at 68 °C and stays there", logged(1500, 50, opens(68, 67)), "engine-below-target thermostat-passing-early", ""},
		{"swings over by 10 K", logged(1500, 50, opens(99, 90)), "thermostat-opening-late", ""},
		{"opens at 100 °C", logged(1500, 50, opens(100, 99)), "thermostat-opening-late", ""},
		{"overheats on the way home: 5 K over where fans start (FN1, published; F07)", logged(1500, 50, func(s float64) float64 { return opens(91, 89)(s) + max(0, s-1300)/200*15 }), "engine-above-rating", ""},
		{"waits for its fan in traffic", logged(1500, 50, func(s float64) float64 { return opens(91, 89)(s) + max(0, s-1300)/200*9 }), "", ""},
		{"comes smoothly to 62 °C", logged(2000, 50, creeps(62)), "engine-below-target warm-up-no-knee", ""},
		{"falls back to 62 °C on the road", town(86, 62), "engine-below-target", ""},
		{"falls to 79 °C on the road", town(89, 79), "drops-on-road", ""},
		{"falls to 89 °C on the road, from where the fan held it in traffic: its mark is 88 °C", after(1900, 98, 89), "", ""},
		{"heated: 105 °C at light load, 86 °C under load (TH6 and TH7, published, T2)", heated(after(1900, 105, 86)), "", ""},
		{"heated: falls back to 70 °C on the road", heated(after(1900, 105, 70)), "engine-below-target", ""},
		{"never moves", logged(900, 50, func(float64) float64 { return 20 }), "sensor-stuck", ""},
		{"two spikes", spikes, "sensor-jumps", ""},
		{"no temperature", noPlugIn, "", "log-empty"},
	} {
		f := analyst(t).Analyse(tt.c)
		if got := strings.Join(inOrder(pressing(f)), " "); got != tt.pressing {
			t.Errorf("%s: flags %q, want %q (%+v)", tt.name, got, tt.pressing, f.WarmUps[0])
		}
		if tt.note != "" && find(f, tt.note) == nil {
			t.Errorf("%s: no note %s in %+v", tt.name, tt.note, f.Flags)
		}
		for _, flag := range f.Flags {
			if flag.Stage != cases.AfterRepair || flag.Round != evidence.WholeCase || !strings.Contains(becauseOf(&flag), `“morning”, after repair`) {
				t.Errorf("%s: %s has stage %q, round %d, %q", tt.name, flag.ID, flag.Stage, flag.Round, flag.Because)
			}
		}
	}
}

// A sensor that is 20 K off by the gun (DT16, common practice) or by its resistance (NTC20 to NTC100, published, V16)
// makes a sound thermostat open too early or too late in its own log; a sensor that was renewed is judged by what it shows.
func TestALogOfAWrongSensorBlamesNoThermostat(t *testing.T) {
	walked := func(stage cases.Stage, ect float64) func(*cases.Case) {
		return func(c *cases.Case) {
			c.Rounds = []cases.Round{{Stage: stage, EctC: degC(ect), AmbientC: degC(18), Readings: []cases.Reading{{Point: diagram.Housing, ShownC: degC(88)}}}}
		}
	}
	wrong := func(stage cases.Stage) func(*cases.Case) {
		return func(c *cases.Case) {
			test := cases.Test{Kind: cases.SensorTest, Stage: stage, Points: []cases.BenchPoint{{TempC: degC(80), Ohm: casetest.P(806.9)}}}
			for _, p := range [][2]float64{{20, 2502}, {50, 806.9}, {80, 308.6}, {100, 175.7}} {
				test.Reference = append(test.Reference, cases.OhmPoint{TempC: degC(p[0]), Ohm: casetest.P(p[1])})
			}
			c.Tests = []cases.Test{test}
		}
	}
	for _, tt := range []struct {
		name   string
		c      *cases.Case
		found  func(*cases.Case)
		blames string
	}{
		{"20 K too little by the gun", logged(1500, 50, opens(68, 67)), walked(cases.AfterRepair, 67), ""},
		{"20 K too much by the gun", logged(1500, 50, opens(110, 109)), walked(cases.AfterRepair, 109), ""},
		{"30 K too little by its resistance", logged(1500, 50, opens(68, 67)), wrong(cases.AfterRepair), ""},
		{"as the gun shows", logged(1500, 50, opens(99, 90)), walked(cases.AfterRepair, 90), "thermostat-opening-late"},
		{"wrong before it was renewed", logged(1500, 50, opens(99, 90)), walked(cases.BeforeRepair, 109), "thermostat-opening-late"},
	} {
		tt.found(tt.c)
		f := analyst(t).Analyse(tt.c)
		var blames []string
		for _, flag := range f.WarmUps[0].Flags {
			if flag.Severity != evidence.Note {
				blames = append(blames, flag.ID)
			}
		}
		if got := strings.Join(blames, " "); got != tt.blames {
			t.Errorf("%s: the log says %q, want %q", tt.name, got, tt.blames)
		}
		if told := find(f, "log-of-wrong-sensor") != nil; told != (tt.blames == "") {
			t.Errorf("%s: that the sensor is wrong is told: %v", tt.name, told)
		}
	}
}

// In hard frost and for an unknown rating the same log says less, or on what.
func TestLogIsJudgedByTheCase(t *testing.T) {
	c := logged(2000, 50, creeps(62))
	c.Site.AmbientC = casetest.P(diagram.Celsius(-9))
	if got := pressing(analyst(t).Analyse(c)); len(got) > 0 { // REG2, published (R1, R4)
		t.Errorf("at -9 °C outside: %v", got)
	}
	c.Site.AmbientC = nil
	c.Rounds = []cases.Round{{Stage: cases.AfterRepair, AmbientC: casetest.P(diagram.Celsius(-9))}} // as that morning's round has it
	if got := pressing(analyst(t).Analyse(c)); len(got) > 0 {
		t.Errorf("at -9 °C outside, as a round has it: %v", got)
	}
	c = logged(2000, 50, creeps(75))
	c.Loop.ThermostatOpensC = nil
	if f := find(analyst(t).Analyse(c), "engine-below-target"); f == nil || !strings.Contains(becauseOf(f), "88 °C assumed") {
		t.Errorf("rating not known: %+v", f)
	}
	c.Loop.ThermostatOpensC = casetest.P(diagram.Celsius(82))
	if got := pressing(analyst(t).Analyse(c)); len(got) > 0 {
		t.Errorf("75 °C under a rating of 82 °C: %v", got)
	}
}

// The keys of a log in the open case format's answer, null where not known.
func TestDocumentHoldsEachLog(t *testing.T) {
	c := logged(1500, 50, opens(91, 89))
	c.Logs = append(c.Logs, cases.Log{Name: "empty"})
	text, err := json.Marshal(evidence.Document(c, analyst(t).Analyse(c)).WarmUp)
	if err != nil {
		t.Fatal(err)
	}
	var logs []map[string]json.RawMessage
	if err := json.Unmarshal(text, &logs); err != nil || len(logs) != 2 {
		t.Fatalf("%s: %v", text, err)
	}
	wantKeys(t, "warm_up[0]", logs[0], "knee_c knee_s log plateau_c reaches_regulating")
	var all []struct {
		Log      string          `json:"log"`
		KneeC    diagram.Celsius `json:"knee_c"`
		KneeS    float64         `json:"knee_s"`
		PlateauC diagram.Celsius `json:"plateau_c"`
		Reaches  bool            `json:"reaches_regulating"`
	}
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	first := all[0]
	if first.Log != "morning" || math.Abs(float64(first.KneeC)-91) > 1 || math.Abs(first.KneeS-658) > 10 || first.KneeS != math.Round(first.KneeS) || math.Abs(float64(first.PlateauC)-89) > 0.5 || !first.Reaches {
		t.Errorf("%s", text)
	}
	if want := `{"log":"empty","knee_c":null,"knee_s":null,"plateau_c":null,"reaches_regulating":null}`; !strings.Contains(string(text), want) {
		t.Errorf("%s doesn't hold %s", text, want)
	}
}

func inOrder(words []string) []string {
	sort.Strings(words)
	return words
}
