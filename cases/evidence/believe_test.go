package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A case may hold up to 400 °C by its format; what no coolant can have isn't judged by, but
// named, and the case keeps it. 150 °C is judgement: far over any boiling under a cap.
func TestImpossibleCoolantIsNamedAndNotUsed(t *testing.T) {
	at := func(c diagram.Celsius) *diagram.Celsius { return &c }
	c := toCase(healthy("outlet-thermostat", warm2500).open(95, 15))
	c.Loop.Coolant, c.Loop.CapKPa = cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}, casetest.P(diagram.KPa(110))
	if f := analyst(t).Analyse(c); find(f, "not-coolant") != nil {
		t.Fatalf("an honest case: %+v", find(f, "not-coolant"))
	}
	c.Rounds[0].EctC = at(390)
	c.Codes = []cases.Code{{Code: "P0217", FreezeFrame: cases.FreezeFrame{EctC: at(-58)}}}
	c.Rounds[0].Readings = append(c.Rounds[0].Readings, cases.Reading{Point: diagram.HeaterIn, ShownC: at(300)})
	f := analyst(t).Analyse(c)
	var told []string
	for _, flag := range f.Flags {
		if flag.ID == "not-coolant" {
			told = append(told, flag.Text.String())
		}
	}
	all := strings.Join(told, "\n")
	for _, want := range []string{"390 °C", "scan tool, round 1", "-58 °C", "freeze frame of P0217", "300 °C", "heater supply, round 1"} {
		if !strings.Contains(all, want) {
			t.Errorf("nothing of %q in:\n%s", want, all)
		}
	}
	if b := f.Hottest(); b == nil || b.HottestC > 100 {
		t.Errorf("the hottest: %+v", b)
	}
	if find(f, "stop-hot") != nil {
		t.Errorf("judged by what can't be: %v", pressing(f))
	}
	if *c.Rounds[0].EctC != 390 || c.Codes[0].FreezeFrame.EctC == nil {
		t.Error("the case itself was changed")
	}
}

// The air outside was never hotter than 56.7 °C (published, the World Meteorological Organization's archive of extremes):
// 90 °C is a day of 90 °F, by which the hoses of a sound engine would be as cold as the air.
func TestAirHotterThanAnyIsNamedAndNotUsed(t *testing.T) {
	for outside, want := range map[diagram.Celsius]bool{90: true, 48: false} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(103, 10))
		c.Site.AmbientC, c.Rounds[0].AmbientC = &outside, nil
		f := analyst(t).Analyse(c)
		if flag := find(f, "not-air"); (flag != nil) != want || want && !strings.Contains(flag.Text.String(), "90 °C") {
			t.Errorf("outside %g °C: %+v", float64(outside), flag)
		}
		if flag := find(f, "thermostat-not-opening"); flag != nil {
			t.Errorf("outside %g °C: %s", float64(outside), flag.Text)
		}
		if *c.Site.AmbientC != outside {
			t.Error("the case itself was changed")
		}
	}
}

// 88 read as degrees Fahrenheit are 31 °C, with which a cold engine's thermostat would be open; 71 and 110 °C are marks that
// thermostats bear (from memory).
func TestAMarkThatNoThermostatBearsIsNamedAndNotUsed(t *testing.T) {
	for mark, named := range map[diagram.Celsius]string{31: "31 °C", 71: "", 110: "", 140: "140 °C"} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(103, 10))
		c.Loop.ThermostatOpensC = &mark
		flag := find(analyst(t).Analyse(c), "not-mark")
		if (flag != nil) != (named != "") || flag != nil && !strings.Contains(flag.Text.String(), named) {
			t.Errorf("marked %v: %+v", mark, flag)
		}
		if used := evidence.OpensC(c) == mark; used != (named == "") {
			t.Errorf("marked %v: taken to open at %v", mark, evidence.OpensC(c))
		}
	}
}

// Full opening comes 6 to 15 K over where a thermostat begins to open (TH2, published): one mark is mistyped where it comes
// at once, or far over.
func TestFullOpeningFitsWhereItOpens(t *testing.T) {
	opens := diagram.Celsius(88)
	for full, named := range map[diagram.Celsius]bool{88.8: true, 80: true, 94: false, 103: false, 129: true} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(103, 10))
		c.Loop.ThermostatOpensC, c.Loop.ThermostatFullC = &opens, &full
		if got := find(analyst(t).Analyse(c), "not-full") != nil; got != named {
			t.Errorf("fully open at %g °C: named %t, want %t", float64(full), got, named)
		}
	}
}

// A mark of 15 psi or 1.1 bar, typed where kilopascals are asked for, made an engine boil that is far from it. Caps
// of 28 and 200 kPa there are (from memory); 0 is an open loop.
func TestAMarkThatNoCapBearsIsNamedAndNotUsed(t *testing.T) {
	for mark, named := range map[diagram.KPa]bool{15: true, 1.1: true, 0: false, 28: false, 200: false} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(103, 10))
		c.Loop.Coolant, c.Loop.CapKPa = cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}, &mark
		c.Tests = []cases.Test{{Kind: cases.CapTest, RatedKPa: &mark, OpensKPa: casetest.P(diagram.KPa(70))}}
		f := analyst(t).Analyse(c)
		told := 0
		for _, flag := range f.Flags {
			if flag.ID == "not-cap" {
				told++
			}
		}
		if want := map[bool]int{true: 2}[named]; told != want {
			t.Errorf("marked %g kPa: told %d times, want %d", float64(mark), told, want)
		}
		if late := find(f, "cap-late"); named && late != nil {
			t.Errorf("marked %g kPa: %s", float64(mark), late.Text)
		}
		if b := f.Hottest(); b != nil && named {
			t.Errorf("marked %g kPa: a margin to boiling of %g K", float64(mark), float64(b.MarginK))
		}
		if *c.Tests[0].RatedKPa != mark {
			t.Error("the case itself was changed")
		}
	}
}

// With the key off a fan may rest however hot the engine is (common practice, no source): 0 rpm beside a fan that is
// off is no dead fan, and is told.
func TestAFanOfAStandingEngineMayRest(t *testing.T) {
	for rpm, dead := range map[float64]bool{0: false, 800: true} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(110, 5))
		c.Rounds[0].EngineRPM, c.Rounds[0].SpeedKmh, c.Rounds[0].Fan, c.Rounds[0].EctC = &rpm, casetest.P(0.0), cases.FanOff, casetest.P(diagram.Celsius(110))
		f := analyst(t).Analyse(c)
		if got := find(f, "fan-not-running") != nil; got != dead {
			t.Errorf("at %g rpm: fan-not-running %t, want %t", rpm, got, dead)
		}
		if got := find(f, "engine-stands") != nil; got == dead {
			t.Errorf("at %g rpm: engine-stands %t", rpm, got)
		}
		cold := diagram.Celsius(9)
		c.Rounds[0].EctC, c.Rounds[0].Readings = &cold, nil // before the start, as a sensor is held to the air
		if flag := find(analyst(t).Analyse(c), "engine-stands"); flag != nil {
			t.Errorf("cold at %g rpm: %s", rpm, flag.Text)
		}
	}
}
