package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A big drop is normal while the thermostat throttles; above the rating it is
// a restriction: DT4 in testdata/trade/numbers.csv, common practice.
func TestRestrictionShowsOnlyAboveRating(t *testing.T) {
	a := analyst(t)
	for _, tt := range []struct {
		ect  float64
		want bool
	}{{88, false}, {96, false}, {97, true}, {110, true}} {
		s := healthy("outlet-thermostat", warm2500).open(tt.ect, 35)
		if got := find(a.Analyse(toCase(s)), "flow-restricted") != nil; got != tt.want {
			t.Errorf("engine at %.0f °C, rated 88 °C: flow-restricted %v, want %v", tt.ect, got, tt.want)
		}
	}
}

// The guards of a warm-up verdict: REG1, REG2, REG5 (published, R1, R4), WU1
// and WU3 (common practice). The target is 88 − 11 = 77 °C.
func TestWarmUpVerdict(t *testing.T) {
	a := analyst(t)
	for _, tt := range []struct {
		name                   string
		ect, ambient, min, kmh float64
		want                   string
	}{
		{"driven long", 70, 15, 20, 60, "engine-below-target"},
		{"driven long, at the target", 77, 15, 20, 60, ""},
		{"driven long in deep frost", 70, -8, 20, 60, "warm-up-no-call"},
		{"driven long, just no deep frost", 70, -7, 20, 60, "engine-below-target"},
		{"just started", 70, 15, 5, 60, ""},
		{"idled in the cold", 70, 5, 40, 0, "warm-up-no-call"},
		{"idled too short", 70, 20, 20, 0, "warm-up-no-call"},
		{"idled long", 70, 20, 30, 0, "engine-below-target"},
	} {
		s := healthy("outlet-thermostat", warmIdle).shut(tt.ect)
		s.round.AmbientC, s.round.MinutesSinceStart, s.round.SpeedKmh = casetest.P(diagram.Celsius(tt.ambient)), &tt.min, &tt.kmh
		f := a.Analyse(toCase(s))
		for _, id := range []string{"engine-below-target", "warm-up-no-call"} {
			if got := find(f, id) != nil; got != (id == tt.want) {
				t.Errorf("%s: %s %v", tt.name, id, got)
			}
		}
	}
}

// Where the radiator warms with a cool engine (F01 COLD5, common practice) nothing says in the
// same breath that the round can't tell.
func TestAPassingThermostatIsNotCalledUntold(t *testing.T) {
	s := healthy("outlet-thermostat", warmIdle).open(66, 10)
	s.round.MinutesSinceStart = nil
	f := analyst(t).Analyse(toCase(s))
	if find(f, "thermostat-passing-early") == nil || find(f, "warm-up-no-call") != nil {
		t.Errorf("%+v", f.Flags)
	}
}

// A drop that grows since the warm-up only says that the thermostat has opened:
// what is to grow with revs (F10, common practice) is the drop of a warm idle.
func TestWarmUpIsNoIdleToCompareTheLowerHoseWith(t *testing.T) {
	a := analyst(t)
	fast := healthy("outlet-thermostat", warm2500).open(106, 40)
	for _, tt := range []struct {
		idle *scene
		want bool
	}{
		{healthy("outlet-thermostat", cold5), false},
		{healthy("outlet-thermostat", warmIdle).open(70, 20), false},
		{healthy("outlet-thermostat", warmIdle), true},
	} {
		if got := find(a.Analyse(toCase(tt.idle, fast)), "lower-hose-collapse") != nil; got != tt.want {
			t.Errorf("idle at %.0f °C, then 106 °C at raised speed: lower-hose-collapse %v, want %v", tt.idle.ectC, got, tt.want)
		}
	}
}

// An engine that comes up to its rating between the two rounds opens its thermostat meanwhile, and that makes the drop
// (DT2, common practice): a sucked hose lets it get hotter than it is held (F10 at W2500, "climbs").
func TestAnEngineThatComesToItsRatingSucksNoHose(t *testing.T) {
	for ect, want := range map[float64]bool{90: false, 100: true} {
		c := toCase(healthy("outlet-thermostat", warmIdle).open(84, 12), healthy("outlet-thermostat", warm2500).open(ect, 24))
		if got := find(analyst(t).Analyse(c), "lower-hose-collapse") != nil; got != want {
			t.Errorf("84 °C at idle, %g °C at raised speed, rated 88 °C: lower-hose-collapse %v", ect, got)
		}
	}
}

// FN1 (published) is of fans that start by 98 °C; where they start with a hotter thermostat nobody published.
func TestWhereAFanStartsWithAHotThermostatIsNotSaidToBePublished(t *testing.T) {
	for rating, want := range map[diagram.Celsius]bool{88: true, 97: false} {
		s := healthy("inlet-thermostat", warmIdle).open(113, 4)
		s.round.Fan = cases.FanOff
		c := toCase(s)
		c.Loop.ThermostatOpensC = &rating
		flag := find(analyst(t).Analyse(c), "fan-not-running")
		if flag == nil || strings.Contains(flag.Because[1].String(), "published") != want {
			t.Errorf("rated %g °C: %+v", float64(rating), flag)
		}
	}
}

// Ethylene glycol by itself boils near 197 °C (ASHRAE); half and half does near 108 °C (M20, published), which the
// reason has to be of.
func TestWhatBoilsIsTheMix(t *testing.T) {
	flag := find(analyst(t).Analyse(toCase(healthy("outlet-thermostat", warm2500).open(124, 15))), "boiling-margin-small")
	if flag == nil || !strings.Contains(flag.Because[0].String(), "ethylene glycol of 50 % by volume boils at") {
		t.Errorf("%+v", flag)
	}
}

func TestEngineThatFellBackOnTheRoadIsBelowTarget(t *testing.T) {
	warm := healthy("inlet-thermostat", warmIdle)
	cool := healthy("inlet-thermostat", warmIdle).open(70, 10)
	cool.round.SpeedKmh = casetest.P(80.0)
	cool.round.MinutesSinceStart = nil
	if f := find(analyst(t).Analyse(toCase(warm, cool)), "engine-below-target"); f == nil || f.Round != 1 || f.Severity != evidence.Act {
		t.Errorf("engine-below-target: %+v", f)
	}
}

// A heated thermostat's wax opens at 105 °C, and its heater may bring it to 82 °C (TH6, TH7, published, T2): an
// engine is held to 82 °C, which is no 11 K under what is marked on it.
func TestAHeatedThermostatsTargetIsNotSaidToBeTheRegulators(t *testing.T) {
	for layout, want := range map[string]string{"inlet-thermostat": "above 94 °C, 11 K under the rating", "heated-thermostat": "no less than 82 °C"} {
		s := healthy(layout, warmIdle).open(66, 10)
		s.round.SpeedKmh, s.round.MinutesSinceStart = casetest.P(80.0), casetest.P(25.0)
		c := toCase(s)
		c.Loop.ThermostatOpensC = casetest.P(diagram.Celsius(105))
		f := find(analyst(t).Analyse(c), "engine-below-target")
		if f == nil || !strings.Contains(becauseOf(f), want) {
			t.Errorf("%s: %q isn't said of %+v", layout, want, f)
		}
	}
}

// After the repair the first stage's heat says nothing, and rounds are judged
// the same.
func TestStagesAreKeptApart(t *testing.T) {
	before := healthy("outlet-thermostat", warmIdle)
	after := faults["F01 COLD5"].scene(healthy("outlet-thermostat", cold5), 7)[0]
	after.round.Stage = cases.AfterRepair
	if f := find(analyst(t).Analyse(toCase(before, after)), "thermostat-passing-early"); f == nil || f.Round != 1 {
		t.Errorf("thermostat-passing-early after the repair: %+v", f)
	}
	after.round.Stage = cases.BeforeRepair
	if f := find(analyst(t).Analyse(toCase(before, after)), "thermostat-passing-early"); f != nil {
		t.Errorf("a radiator that is warm from before: %+v", f)
	}
}

// An inlet loop's upper hose creeps warm behind a shut thermostat, so its lower
// hose is judged (common practice).
func TestInletThermostatIsJudgedOnTheLowerHose(t *testing.T) {
	s := healthy("inlet-thermostat", cold5).shut(70).set("rad_in", 60).set("engine_out", 64)
	if got := pressing(analyst(t).Analyse(toCase(s))); got != nil {
		t.Errorf("warm upper hose, cold lower hose in a warm-up: %v", got)
	}
}

func TestUnknownRatingIsSaid(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(110, 35))
	c.Loop.ThermostatOpensC = nil
	f := find(analyst(t).Analyse(c), "flow-restricted")
	if f == nil || !strings.Contains(becauseOf(f), "88 °C assumed") {
		t.Errorf("flow-restricted: %+v", f)
	}
}

// DT12 (common practice) speaks of a heater that is asked for heat: where its
// setting isn't noted, the flag asks for it.
func TestHeaterSettingNotNotedIsAsked(t *testing.T) {
	for name, temps := range map[string][2]float64{"both hoses cold": {30, 28}, "the return cold": {84, 24}} {
		for heater, asked := range map[cases.Heater]bool{
			cases.HeaterFull: true, cases.HeaterHalf: true, cases.HeaterUnknown: false, "": false,
		} {
			s := healthy("outlet-thermostat", warmIdle).heat(temps[0], temps[1])
			s.round.Heater = heater
			flag := find(analyst(t).Analyse(toCase(s)), "heater-no-flow")
			if flag == nil {
				t.Fatalf("%s, heater %q: no heater-no-flow", name, heater)
			}
			cited := strings.Contains(becauseOf(flag), "heat asked for")
			question := strings.Contains(flag.Text.String(), "is the heater on?")
			if (flag.Severity == evidence.Act) != asked || cited != asked || question == asked {
				t.Errorf("%s, heater %q: %+v", name, heater, flag)
			}
		}
	}
}

// On a hot day whose temperature nobody noted, warm hoses after a start say
// nothing.
func TestUnnotedHotDayRaisesNothing(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", cold5).shut(48).set("engine_out", 40).set("rad_in", 38).set("rad_out", 38).set("pump_in", 38))
	c.Rounds[0].AmbientC = nil
	if got := pressing(analyst(t).Analyse(c)); got != nil {
		t.Errorf("a start on an unnoted hot day: %v", got)
	}
}

// A sensor outside DT16 (10 K, common practice) is not believed: the round is
// judged by the gun.
func TestLyingSensorHandsOverToTheGun(t *testing.T) {
	for _, tt := range []struct {
		name   string
		offset float64
		want   string
		engine float64
	}{
		{"agrees", 4, "", 94},
		{"to repeat", 8, "sensor-compare", 98},
		{"reads high", 26, "sensor-disagrees", 89},
		{"reads low", -30, "sensor-disagrees", 89},
	} {
		s := healthy("outlet-thermostat", warmIdle).open(90, 20)
		s.ectC += tt.offset
		f := analyst(t).Analyse(toCase(s))
		got := ""
		for _, id := range []string{"sensor-compare", "sensor-disagrees"} {
			if find(f, id) != nil {
				got += id
			}
		}
		if engine := f.Rounds[0].EngineC; got != tt.want || engine == nil || diagram.Celsius(tt.engine).Minus(*engine) > 0.1 || engine.Minus(diagram.Celsius(tt.engine)) > 0.1 {
			t.Errorf("%s: %q, engine %v °C by %s; want %q, %.0f °C", tt.name, got, *engine, f.Rounds[0].EngineBy, tt.want, tt.engine)
		}
	}
}

func TestWithoutSensorTheGunThenTheGaugeSpeaks(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(110, 35))
	c.Rounds[0].EctC = nil
	f := analyst(t).Analyse(c)
	if find(f, "flow-restricted") == nil || !strings.Contains(f.Rounds[0].EngineBy.String(), "gun") {
		t.Errorf("by the gun: %v, engine by %q", pressing(f), f.Rounds[0].EngineBy)
	}
	c.Rounds[0].Readings, c.Rounds[0].Gauge = nil, cases.GaugeRed
	f = analyst(t).Analyse(c)
	if flag := find(f, "engine-above-rating"); flag == nil || f.Rounds[0].EngineBy.Key() != "by.gauge" {
		t.Errorf("by the gauge: %v, engine by %q", pressing(f), f.Rounds[0].EngineBy)
	}
}

// Bare metal reads far too cold (IR3, published, T12), so it drives nothing.
func TestDoubtfulReadingDrivesNothing(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(110, 15))
	for i, r := range c.Rounds[0].Readings {
		if r.Point == diagram.RadOut {
			c.Rounds[0].Readings[i].ShownC = casetest.P(diagram.Celsius(30))
			c.Rounds[0].Readings[i].Surface = cases.Surface{Word: "aluminium-bare"}
		}
	}
	f := analyst(t).Analyse(c)
	r := f.Rounds[0].Readings[diagram.RadOut]
	flag := find(f, "reading-doubtful")
	if !r.Doubtful || r.Why.Empty() || flag == nil || flag.Severity != evidence.Look || len(flag.Points) != 1 {
		t.Errorf("bare aluminium at 30 °C shown: %+v, flag %+v", r, flag)
	}
	if find(f, "flow-restricted") != nil || find(f, "hose-uneven") != nil {
		t.Errorf("a doubtful reading drives %v", pressing(f))
	}
	for _, d := range f.Deltas {
		if d.Name == evidence.AcrossRadiator && d.State != evidence.Unknown {
			t.Errorf("across-radiator with a doubtful end: %+v", d)
		}
	}
}

func TestImpossibleReadingIsRepeatedAndDrivesNothing(t *testing.T) {
	s := healthy("inlet-thermostat", warm2500).open(110, 15).set("rad_out", 112)
	f := analyst(t).Analyse(toCase(s))
	flag := find(f, "reading-impossible")
	if flag == nil || len(flag.Points) != 2 || !strings.Contains(flag.Text.String(), "Repeat") {
		t.Fatalf("lower hose hotter than the upper: %+v", flag)
	}
	if find(f, "air-side") != nil || find(f, "hose-uneven") != nil {
		t.Errorf("an impossible reading drives %v", pressing(f))
	}
}

// One place by itself contradicts nothing, and bare metal, whose temperature nobody knows, accuses nobody.
func TestOnlyTwoGoodReadingsContradictEachOther(t *testing.T) {
	for name, change := range map[string]func(*cases.Round){
		"only the lower hose": func(r *cases.Round) { r.Reading(diagram.RadIn).ShownC = nil },
		"only the upper hose": func(r *cases.Round) { r.Reading(diagram.RadOut).ShownC = nil },
		"upper on bare metal": func(r *cases.Round) {
			r.Reading(diagram.RadIn).Surface.Word, *r.Reading(diagram.RadIn).ShownC = "cast-iron", 70 // doubtful, and far under 112 °C all the same
		},
		"lower on bare metal": func(r *cases.Round) { r.Reading(diagram.RadOut).Surface.Word = "aluminium-bare" },
	} {
		c := toCase(healthy("inlet-thermostat", warm2500).open(110, 15).set("rad_out", 112).set("pump_in", 95))
		change(&c.Rounds[0])
		if flag := find(analyst(t).Analyse(c), "reading-impossible"); flag != nil {
			t.Errorf("%s: %+v", name, flag)
		}
	}
}

// The lower hose warms from the housing of a shut inlet thermostat, where the coolant in it stands still
// (common practice, no source; by how much is our judgement): that is the fault's sign and no slip.
func TestALowerHoseThatCreepsWarmIsNoSlip(t *testing.T) {
	for over, want := range map[float64]bool{15: false, 30: true} {
		s := healthy("inlet-thermostat", warm2500).shut(115).set("rad_out", 23).set("pump_in", 23+over)
		if flag := find(analyst(t).Analyse(toCase(s)), "reading-impossible"); (flag != nil) != want {
			t.Errorf("%g K over the radiator's end: %+v", over, flag)
		}
	}
}

// Air that comes out of the core colder than it went in is as impossible, and is
// not told as coolant that warms.
func TestAirThatCoolsInTheCoreIsToldAsAir(t *testing.T) {
	s := healthy("outlet-thermostat", warmIdle).set("air_on", 20).set("air_off", 5)
	flag := find(analyst(t).Analyse(toCase(s)), "reading-impossible")
	if flag == nil || len(flag.Points) != 2 {
		t.Fatalf("air of 20 °C that leaves with 5 °C: %+v", flag)
	}
	var because []string
	for _, why := range flag.Because {
		because = append(because, why.String())
	}
	told := strings.Join(because, "; ")
	if !strings.Contains(told, "colder") || strings.Contains(told, "coolant") {
		t.Errorf("it is told by %q", told)
	}
}

// Air before the radiator comes from outside (A0 of the trade's loop: a probe, not the gun); how much hotter it may be off a
// condenser is judgement. What was read behind the core isn't blamed for it.
func TestAirBeforeTheRadiatorComesFromOutside(t *testing.T) {
	for _, tt := range []struct {
		name    string
		outside *diagram.Celsius
		air     float64
		want    bool
	}{
		{"a hot core seen by the gun", casetest.P(diagram.Celsius(24)), 90.5, true},
		{"off a condenser", casetest.P(diagram.Celsius(24)), 50, false},
		{"nobody noted the weather", nil, 90.5, true},
		{"a hot day, not noted", nil, 70, false},
	} {
		s := healthy("outlet-thermostat", warmIdle).set("air_on", tt.air).set("air_off", 75)
		s.round.AmbientC = tt.outside
		f := analyst(t).Analyse(toCase(s))
		flag := find(f, "reading-air-hot")
		if (flag != nil) != tt.want || f.Rounds[0].Readings[diagram.AirOn].Usable() == tt.want {
			t.Errorf("%s, %g °C: %+v", tt.name, tt.air, flag)
		}
		if tt.want && (!f.Rounds[0].Readings[diagram.AirOff].Usable() || find(f, "reading-impossible") != nil) {
			t.Errorf("%s: the air behind the core is blamed too", tt.name)
		}
	}
}

func TestReadingsOutsideTheLayout(t *testing.T) {
	s := healthy("outlet-thermostat", warmIdle).set("bottle_bleed", 60)
	if f := find(analyst(t).Analyse(toCase(s)), "point-not-in-layout"); f == nil || f.Points[0] != diagram.BottleBleed {
		t.Errorf("bleed line in a layout without one: %+v", f)
	}
}

func TestUnknownLayoutStillJudgesRadiatorAndHeater(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(110, 35).heat(100, 70))
	c.Loop.Layout = ""
	f := analyst(t).Analyse(c)
	for _, id := range []string{"layout-unknown", "flow-restricted", "heater-restricted"} {
		if find(f, id) == nil {
			t.Errorf("no %s without a layout: %v", id, pressing(f))
		}
	}
}

func TestNothingMeasured(t *testing.T) {
	a := analyst(t)
	c := &cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{Readings: []cases.Reading{{Point: diagram.RadIn}}}}}
	if f := a.Analyse(c); len(f.Flags) != 1 || f.Flags[0].ID != "nothing-measured" || f.Flags[0].Round != evidence.WholeCase {
		t.Errorf("a round without a number: %+v", f.Flags)
	}
	c.Rounds[0].EctC = casetest.P(diagram.Celsius(50))
	if find(a.Analyse(c), "nothing-measured") != nil {
		t.Error("a sensor value is something to go on")
	}
}

// SF1: 50 °C, published (T18).
func TestHotCaution(t *testing.T) {
	for ect, want := range map[float64]bool{45: false, 89: true} {
		s := healthy("outlet-thermostat", cold5).shut(ect)
		if got := find(analyst(t).Analyse(toCase(s)), "hot-caution") != nil; got != want {
			t.Errorf("engine at %.0f °C: hot-caution %v", ect, got)
		}
	}
}

// Whatever stands in a case, the analysis ends and its numbers can be written.
func TestAnyCaseIsAnswered(t *testing.T) {
	a := analyst(t)
	for _, c := range casetest.Notebook(2000) {
		f := a.Analyse(&c)
		if len(f.Rounds) != len(c.Rounds) {
			t.Fatalf("%s: %d rounds of %d", c.ID, len(f.Rounds), len(c.Rounds))
		}
		for _, flag := range f.Flags {
			if flag.Text.Empty() || flag.ID == "" || flag.Round >= len(c.Rounds) {
				t.Fatalf("%s: %+v", c.ID, flag)
			}
		}
	}
}

func BenchmarkAnalyse(b *testing.B) {
	a := analyst(b)
	var scenes []*scene
	for _, condition := range []string{cold5, warmIdle, warm2500, hotFan, warm2500, hotFan} {
		scenes = append(scenes, healthy("inlet-thermostat", condition))
	}
	scenes[4].open(106, 35)
	c := toCase(scenes...)
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		a.Analyse(c)
	}
}

// A vent that is cold because the heater was off says nothing of the pump.
func TestHeaterOffIsNoIdleToCompareTheVentWith(t *testing.T) {
	idle, fast := healthy("outlet-thermostat", "WIDLE"), healthy("outlet-thermostat", "W2500")
	idle.round.Heater = cases.HeaterOff
	idle.t[diagram.Vent] = 20
	if f := find(analyst(t).Analyse(toCase(idle, fast)), "pump-weak"); f != nil {
		t.Errorf("with the heater off at idle: %v", f.Because)
	}
	idle.round.Heater = cases.HeaterFull
	if f := find(analyst(t).Analyse(toCase(idle, fast)), "pump-weak"); f == nil {
		t.Error("a vent that warms with the revs, heater full, raises nothing (F09, common practice)")
	}
}

// A rule that stays on the safe side by a hot day doesn't say that it takes the weather
// for hot: the model beside it takes the usual one.
func TestASafeAssumptionIsNotTheWeather(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warmIdle).open(66, 10))
	c.Site.AmbientC = nil
	for i := range c.Rounds {
		c.Rounds[i].AmbientC = nil
	}
	f := find(analyst(t).Analyse(c), "thermostat-passing-early")
	if f == nil || !strings.Contains(becauseOf(f), "even at 35 °C") || strings.Contains(becauseOf(f), "assumed") {
		t.Errorf("thermostat-passing-early: %+v", f)
	}
}

// The hotter the engine behind a shut thermostat, the warmer the pump's end of the still lower hose: 20 K over the
// radiator's end at 130 °C is the fault's sign too (judgement); where coolant comes it is a slip.
func TestAStillLowerHoseWarmsWithItsEngine(t *testing.T) {
	for end, want := range map[float64]bool{23: false, 75: true} {
		s := healthy("outlet-thermostat", warm2500).shut(130).set("housing", 129).set("rad_out", end).set("pump_in", end+20)
		if flag := find(analyst(t).Analyse(toCase(s)), "reading-impossible"); (flag != nil) != want {
			t.Errorf("20 K over %g °C: %+v", end, flag)
		}
	}
}
