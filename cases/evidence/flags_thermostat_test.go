package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// The hose behind a shut thermostat is luke-warm by conduction, not as cold as the air: 30 K and
// more under the engine it tells by itself, without the housing before it (F02, "ECT minus upper
// hose" from 30 K on, testdata/trade/signatures.csv; common practice).
func TestALukewarmHoseBehindAHotEngineIsShutOff(t *testing.T) {
	for name, tt := range map[string]struct {
		layout            string
		ect, hose, heater diagram.Celsius
		want              bool
	}{
		"luke-warm":              {"outlet-thermostat", 112, 48, 104, true},
		"cooler by what is lost": {"outlet-thermostat", 112, 90, 104, false},
		"just over its rating":   {"outlet-thermostat", 95, 48, 88, false},
		"before the thermostat":  {"inlet-thermostat", 112, 48, 104, false},
		"no coolant anywhere":    {"outlet-thermostat", 112, 60, 40, false}, // F09: what both lack is coolant
	} {
		c := &cases.Case{
			Loop: cases.Loop{Layout: tt.layout, ThermostatOpensC: casetest.P(diagram.Celsius(88))}, Site: cases.Site{AmbientC: casetest.P(diagram.Celsius(22))},
			Rounds: []cases.Round{{MinutesSinceStart: casetest.P(15.0), EngineRPM: casetest.P(800.0), EctC: &tt.ect, Readings: []cases.Reading{
				{Point: diagram.EngineOut, ShownC: &tt.hose}, {Point: diagram.RadIn, ShownC: casetest.P(tt.hose - 8)},
				{Point: diagram.HeaterIn, ShownC: &tt.heater},
			}}},
		}
		if got := find(analyst(t).Analyse(c), "thermostat-not-opening") != nil; got != tt.want {
			t.Errorf("%s: told as shut %v, want %v", name, got, tt.want)
		}
	}
}

// Without a scan tool the gauge speaks, and is named: low on its scale after 25 minutes is a cold engine (the
// complaint "gauge never reaches the middle", common practice), after 5 minutes it is any.
func TestAGaugeThatStaysLowIsToldByTheGauge(t *testing.T) {
	for minutes, want := range map[float64]bool{5: false, 25: true} {
		c := &cases.Case{
			Loop:   cases.Loop{Layout: "outlet-thermostat"},
			Rounds: []cases.Round{{MinutesSinceStart: &minutes, EngineRPM: casetest.P(2000.0), SpeedKmh: casetest.P(60.0), Gauge: "below-middle"}},
		}
		flag := find(analyst(t).Analyse(c), "engine-below-target")
		if (flag != nil) != want {
			t.Errorf("after %g min: %+v", minutes, flag)
		} else if want && (flag.Severity != evidence.Act || !strings.HasPrefix(flag.Text.String(), "By its gauge")) {
			t.Errorf("told as %s, %q", flag.Severity, flag.Text)
		}
	}
}

// An engine that only the gun saw is told hot by its temperature; the gauge is named only where it stood in the red.
func TestAHotEngineIsToldByWhatSawIt(t *testing.T) {
	for gauge, want := range map[cases.Gauge]bool{"": false, cases.GaugeRed: true} {
		c := toCase(healthy("outlet-thermostat", warm2500).open(112, 15))
		c.Rounds[0].EctC, c.Rounds[0].Gauge = nil, gauge
		flag := find(analyst(t).Analyse(c), "engine-above-rating")
		if flag == nil || strings.Contains(flag.Text.String(), "gauge") != want || strings.Contains(flag.Text.String(), "111 °C") == want {
			t.Errorf("gauge %q: %+v", gauge, flag)
		}
	}
}

// A sensor without coolant round it shows the air or the steam there is, far too little (F09: the
// engine gets hot while it shows nothing; common practice). With the gauge in the red the engine is
// hot, whatever the scan tool says.
func TestTheRedOnACoolSensorIsTold(t *testing.T) {
	for name, tt := range map[string]struct {
		ect   diagram.Celsius
		gauge cases.Gauge
		want  bool
	}{
		"dry sensor":     {70, cases.GaugeRed, true},
		"hot indeed":     {114, cases.GaugeRed, false},
		"a middle gauge": {70, "middle", false},
	} {
		c := &cases.Case{
			Loop:   cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))},
			Rounds: []cases.Round{{MinutesSinceStart: casetest.P(25.0), EngineRPM: casetest.P(800.0), EctC: &tt.ect, Gauge: tt.gauge}},
		}
		f := analyst(t).Analyse(c)
		if got := find(f, "gauge-against-sensor") != nil; got != tt.want {
			t.Errorf("%s: told %v, want %v", name, got, tt.want)
		}
		if caution := find(f, "hot-caution"); strings.Contains(caution.Text.String(), "by its gauge") != tt.want {
			t.Errorf("%s: %s", name, caution.Text)
		}
		if tt.want && (find(f, "engine-below-target") != nil || find(f, "warm-up-no-call") != nil) {
			t.Errorf("%s: called too cold as well", name)
		}
	}
}

// Coolant that a running fan cools to within 15 K of the air has passed the thermostat all the same where the air takes
// its heat (energy balance): little flows, and that is another fault than none. Under AR1's 15 K (testdata/trade/numbers.csv,
// common practice) the air tells nothing.
func TestARadiatorThatWarmsItsAirHasFlow(t *testing.T) {
	for behind, want := range map[float64]bool{21: true, 34: true, 40: false} {
		s := healthy("inlet-thermostat", hotFan).open(108, 20).set("rad_out", 30).set("pump_in", 31).set("air_on", 20).set("air_off", behind)
		if f := analyst(t).Analyse(toCase(s)); (find(f, "thermostat-not-opening") != nil) != want {
			t.Errorf("air of 20 °C leaves at %g °C: %v", behind, pressing(f))
		}
	}
}

// A lower hose that was clearly warm behind an engine that was no hotter rules a shut thermostat out (F02, testdata/trade/signatures.csv:
// what rules it out), on a hot idle as well where hardly anything comes through the radiator (F05): little flows, and it isn't
// the thermostat that holds it. A hose that warms once the engine is hotter still rules nothing out.
func TestAThermostatThatPassedIsNotShut(t *testing.T) {
	shut := func() *scene {
		return healthy("inlet-thermostat", hotFan).open(104, 20).set("rad_out", 30).set("pump_in", 31)
	}
	open := func(ect float64) *scene { return healthy("inlet-thermostat", warm2500).open(ect, 10) }
	for name, tt := range map[string]struct {
		c    *cases.Case
		want string
	}{
		"alone": {toCase(shut()), "thermostat-not-opening"}, "after it passed at 93 °C": {toCase(open(93), shut()), "flow-restricted"},
		"after it passed at 108 °C": {toCase(open(108), shut()), "thermostat-not-opening"}, "before it passed": {toCase(shut(), open(93)), "thermostat-not-opening"},
	} {
		f := analyst(t).Analyse(tt.c)
		for _, id := range []string{"thermostat-not-opening", "flow-restricted"} {
			if found := find(f, id) != nil; found != (id == tt.want) {
				t.Errorf("%s: %s told %v: %v", name, id, found, pressing(f))
			}
		}
	}
}

// The coolant is 2 to 8 K warmer than a hose's rubber (IR8 of testdata/trade/numbers.csv, from memory): by a hose alone no
// engine is called too cold that may stand above its target, 77 °C with a rating of 88 °C (REG1, published).
func TestAHoseCallsNoEngineTooColdThatMayBeWarm(t *testing.T) {
	for hose, want := range map[float64]bool{72: false, 66: true} {
		warm, road := healthy("outlet-thermostat", warmIdle), healthy("outlet-thermostat", warmIdle).open(hose, 10).set("engine_out", hose)
		delete(road.t, "housing")
		for _, p := range []diagram.Point{"rad_in", "heater_in", "bypass"} {
			road.set(p, hose-1)
		}
		road.round.SpeedKmh, road.round.MinutesSinceStart = casetest.P(80.0), nil
		c := toCase(warm, road)
		c.Rounds[1].EctC = nil
		if f := analyst(t).Analyse(c); (find(f, "engine-below-target") != nil) != want {
			t.Errorf("upper hose at %g °C on the road: told %v, want %v: %v", hose, !want, want, pressing(f))
		}
	}
}

// Behind a shut thermostat the bypass is very hot (F02, testdata/trade/signatures.csv) and open as it should be, which it
// stays once creeping coolant has warmed the lower hose by more than 15 K. One whose thermostat has opened since is judged.
func TestTheBypassOfAShutThermostatIsOpenRightly(t *testing.T) {
	shut := func() *scene {
		return healthy("inlet-thermostat", hotFan).open(104, 20).set("rad_out", 30).set("pump_in", 31)
	}
	crept := func(lower float64) *scene {
		return healthy("inlet-thermostat", hotFan).open(118, 20).set("rad_out", lower).set("pump_in", lower-2).set("housing", 112).set("engine_out", 114).set("bypass", 114)
	}
	for name, tt := range map[string]struct {
		c    *cases.Case
		want bool
	}{
		"alone": {toCase(crept(42)), true}, "after nothing passed": {toCase(shut(), crept(42)), false}, "after it opened": {toCase(shut(), crept(106)), true},
	} {
		if f := analyst(t).Analyse(tt.c); (find(f, "bypass-open") != nil) != tt.want {
			t.Errorf("%s: told %v, want %v: %v", name, !tt.want, tt.want, pressing(f))
		}
	}
}

// A bypass that takes most of the coolant lets it warm little in the engine (F11, testdata/trade/signatures.csv: outlet over
// inlet up to 5 K). Where little comes through the engine it warms by more, and the inlet's valve mixes rightly.
func TestWhatMixesBeforeAStarvedEngineIsNoOpenBypass(t *testing.T) {
	for rise, want := range map[float64]bool{3: true, 12: false} {
		s := healthy("inlet-thermostat", hotFan).open(112, 40)
		s.set("housing", s.t["engine_out"]-rise)
		if f := analyst(t).Analyse(toCase(s)); (find(f, "bypass-open") != nil) != want {
			t.Errorf("warmed by %g K in the engine: told %v, want %v: %v", rise, !want, want, pressing(f))
		}
	}
}

// An engine falls back only from where it was on the same run: four minutes after another start it is on its way up, and
// no call is made before 12 minutes of driving (WU1, testdata/trade/numbers.csv, common practice).
func TestAnotherStartIsNoFallingBack(t *testing.T) {
	for minutes, want := range map[float64]bool{4: false, 42: true} {
		hot, road := diagram.Celsius(92), diagram.Celsius(55)
		c := &cases.Case{
			Loop: cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))}, Site: cases.Site{AmbientC: casetest.P(diagram.Celsius(18))},
			Rounds: []cases.Round{
				{MinutesSinceStart: casetest.P(30.0), EngineRPM: casetest.P(800.0), EctC: &hot},
				{MinutesSinceStart: &minutes, EngineRPM: casetest.P(2000.0), SpeedKmh: casetest.P(50.0), EctC: &road},
			},
		}
		if got := find(analyst(t).Analyse(c), "engine-below-target") != nil; got != want {
			t.Errorf("%g min after its start: told as fallen back %v, want %v", minutes, got, want)
		}
	}
}

// A thermostat that stood shut in two rounds and has opened since opened late once (TH9, common practice).
func TestOpenedLateIsToldOnce(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).shut(107))
	c.Rounds = append(c.Rounds, toCase(healthy("outlet-thermostat", warm2500).shut(109)).Rounds...)
	c.Rounds = append(c.Rounds, toCase(healthy("outlet-thermostat", warm2500).open(91, 10)).Rounds...)
	n := 0
	for _, f := range analyst(t).Analyse(c).Flags {
		if f.ID == "thermostat-opening-late" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("told %d times", n)
	}
}
