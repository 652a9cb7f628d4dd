package proof_test

import (
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// round is an invented walk round the loop, standing in 20 °C.
func round(stage cases.Stage, rpm, minutes float64, c map[diagram.Point]diagram.Celsius) cases.Round {
	r := cases.Round{
		Label: "idle", Stage: stage, EngineRPM: casetest.P(rpm), SpeedKmh: casetest.P(0.0), MinutesSinceStart: &minutes,
		Heater: cases.HeaterFull, Fan: cases.FanOff, AmbientC: casetest.P(diagram.Celsius(20)), EctC: casetest.P(c[diagram.Housing]),
	}
	for _, p := range diagram.Points() {
		if t, ok := c[p]; ok {
			r.Readings = append(r.Readings, cases.Reading{Point: p, ShownC: &t, Surface: cases.Surface{Word: "rubber"}})
		}
	}
	return r
}

// The temperatures of a thermostat that is stuck open and of a sound one, warm
// at idle: signatures.csv, F01 and F00 (common practice).
func stuckOpen() map[diagram.Point]diagram.Celsius {
	return map[diagram.Point]diagram.Celsius{"housing": 66, "engine_out": 65, "rad_in": 63, "rad_out": 50, "pump_in": 49, "heater_in": 62, "heater_out": 52}
}

func sound() map[diagram.Point]diagram.Celsius {
	return map[diagram.Point]diagram.Celsius{"housing": 91, "engine_out": 88, "rad_in": 86, "rad_out": 74, "pump_in": 73, "heater_in": 87, "heater_out": 74}
}

func theCase(rounds ...cases.Round) cases.Case {
	return cases.Case{
		Loop:   cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))},
		Codes:  []cases.Code{{Code: "P0128"}},
		Rounds: rounds, Verdict: cases.Verdict{Cause: "thermostat-stuck-open"},
	}
}

func judge(t *testing.T, c cases.Case) proof.Proof {
	t.Helper()
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	j, err := diagnosis.NewJudge()
	if err != nil {
		t.Fatal(err)
	}
	found := a.Analyse(&c)
	plan, ok := diagnosis.PlanFor(&c, cases.AfterRepair)
	if !ok {
		t.Fatal("no plan")
	}
	return proof.Judge(&c, found, j.Rank(&c, found, plan, nil, diagnosis.Prior{}))
}

func TestNothingMeasuredProvesNothing(t *testing.T) {
	p := judge(t, theCase(round(cases.BeforeRepair, 800, 20, stuckOpen())))
	if p.Measured || p.Verdict != proof.NotMeasured || len(p.Pairs) != 0 || len(p.Lone) != 0 {
		t.Errorf("%+v", p)
	}
}

// Who found the loop sound has repaired nothing and is asked to show nothing, until something was measured afterwards all the same.
func TestASoundLoopHasNothingToShow(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()))
	c.Verdict.Cause = cases.Healthy
	if p := judge(t, c); p.Verdict != proof.NoRepair || len(p.Again)+len(p.Repeat) != 0 {
		t.Errorf("%s, again %v, repeat %v", p.Verdict, p.Again, p.Repeat)
	}
	c.Rounds = append(c.Rounds, round(cases.AfterRepair, 800, 20, stuckOpen()))
	if p := judge(t, c); p.Verdict == proof.NoRepair {
		t.Error("measured afterwards, and nothing is to be shown")
	}
}

// A round after the repair that is only begun is like none: no round before it was told that another had its like.
func TestABegunRoundLeavesNoneUnmatched(t *testing.T) {
	begun := round(cases.AfterRepair, 800, 20, nil)
	begun.EctC, begun.MinutesSinceStart = nil, nil
	p := judge(t, theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), begun))
	if len(p.Pairs) != 0 || len(p.Lone) != 0 {
		t.Errorf("%d pairs, unmatched %+v", len(p.Pairs), p.Lone)
	}
}

func TestTheSameConditionIsPaired(t *testing.T) {
	p := judge(t, theCase(
		round(cases.BeforeRepair, 800, 20, stuckOpen()),
		round(cases.BeforeRepair, 2500, 24, stuckOpen()),
		round(cases.AfterRepair, 2400, 30, sound()),
		round(cases.AfterRepair, 850, 25, sound()),
	))
	if len(p.Pairs) != 2 || p.Pairs[0].Before != 1 || p.Pairs[0].After != 2 || p.Pairs[1].Before != 0 || p.Pairs[1].After != 3 {
		t.Fatalf("pairs %+v, alone %+v", p.Pairs, p.Lone)
	}
	for _, at := range p.Pairs[1].Points {
		if k, ok := at.ChangeK(); at.Point == diagram.RadOut && (!ok || k < 20 || k > 28) { // 50 to 74 °C, on rubber
			t.Errorf("the lower hose is warmer by %.1f K, %v", float64(k), ok)
		}
	}
	lone := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()))
	lone.Rounds[0].Readings = lone.Rounds[0].Readings[1:]
	if first := judge(t, lone).Pairs[0].Points[0]; first.Before != nil || first.After == nil {
		t.Errorf("read only afterwards: %+v", first)
	} else if k, ok := first.ChangeK(); ok {
		t.Errorf("a point that was read only afterwards is warmer by %g K", float64(k))
	}
	bare := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()))
	bare.Rounds[1].Readings[0].Surface.Word = "aluminium-bare" // which nobody can judge by
	if first := judge(t, bare).Pairs[0].Points[0]; first.Before == nil || first.After != nil || first.State != evidence.Unknown {
		t.Errorf("on bare metal afterwards: %+v", first)
	}
}

// Only the stage says what is before: the label and the order don't.
func TestUnlikeConditionsStayApart(t *testing.T) {
	for name, change := range map[string]func(*cases.Round){
		"proof.condition.rpm":     func(r *cases.Round) { r.EngineRPM = casetest.P(2500.0) },
		"proof.condition.speed":   func(r *cases.Round) { r.SpeedKmh = casetest.P(80.0) },
		"proof.condition.minutes": func(r *cases.Round) { r.MinutesSinceStart = casetest.P(5.0) },
		"proof.condition.heater":  func(r *cases.Round) { r.Heater = cases.HeaterOff },
		"proof.condition.fan":     func(r *cases.Round) { r.Fan = cases.FanOn },
		"proof.condition.air":     func(r *cases.Round) { r.AmbientC = casetest.P(diagram.Celsius(-5)) },
	} {
		after := round(cases.AfterRepair, 800, 20, sound())
		change(&after)
		p := judge(t, theCase(after, round(cases.BeforeRepair, 800, 20, stuckOpen())))
		if len(p.Pairs) != 0 || len(p.Lone) != 2 {
			t.Errorf("%s: pairs %+v, alone %+v", name, p.Pairs, p.Lone)
			continue
		}
		if why := p.Lone[0].Why.String(); !strings.Contains(why, say.English().Of(name)) || !strings.HasPrefix(why, "Unmatched") {
			t.Errorf("%s: %q", name, why)
		}
		if len(p.Repeat) == 0 {
			t.Errorf("%s: nothing to repeat", name)
		}
	}
}

// A condition that isn't noted in both is told, not held against the pair; an
// engine speed that isn't known in one pairs with nothing.
func TestWhatIsNotNotedIsTold(t *testing.T) {
	after := round(cases.AfterRepair, 800, 20, sound())
	after.Heater, after.Fan = "", cases.FanUnknown
	p := judge(t, theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), after))
	if len(p.Pairs) != 1 || len(p.Pairs[0].Open) != 2 {
		t.Errorf("pairs %+v", p.Pairs)
	}
	after.EngineRPM = nil
	if p := judge(t, theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), after)); len(p.Pairs) != 0 {
		t.Errorf("without an engine speed: %+v", p.Pairs)
	}
}

// A fan that was repaired runs after it and stood before: that is the proof and
// no other condition.
func TestARepairedFanMayRun(t *testing.T) {
	after := round(cases.AfterRepair, 800, 20, sound())
	after.Fan = cases.FanOn
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), after)
	c.Verdict.Cause = "fan-not-running"
	if p := judge(t, c); len(p.Pairs) != 1 {
		t.Errorf("alone: %+v", p.Lone)
	}
}

// Another round of the same condition doesn't borrow its like.
func TestOneRoundProvesOnce(t *testing.T) {
	p := judge(t, theCase(
		round(cases.BeforeRepair, 800, 20, stuckOpen()),
		round(cases.AfterRepair, 900, 20, sound()), round(cases.AfterRepair, 810, 20, sound()),
	))
	if len(p.Pairs) != 1 || p.Pairs[0].After != 2 || len(p.Lone) != 1 || p.Lone[0].Round != 1 {
		t.Errorf("pairs %+v, alone %+v", p.Pairs, p.Lone)
	}
}

// A hot idle after the repair is held against the hot idle before it, not against a warm one that was walked first.
func TestTheRoundThatRanAsLongIsTheLike(t *testing.T) {
	p := judge(t, theCase(
		round(cases.BeforeRepair, 800, 16, stuckOpen()), round(cases.BeforeRepair, 800, 31, stuckOpen()),
		round(cases.AfterRepair, 800, 30, sound()),
	))
	if len(p.Pairs) != 1 || p.Pairs[0].Before != 1 {
		t.Errorf("pairs %+v", p.Pairs)
	}
}

// The same readings after the repair as before it aren't a repair; the words
// say so in every language.
func TestNotFixedIsSaidPlainly(t *testing.T) {
	same := judge(t, theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, stuckOpen())))
	well := judge(t, theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound())))
	if same.Verdict == proof.Fixed || len(same.Unexplained) == 0 || !(same.Healthy < well.Healthy) {
		t.Errorf("unchanged: %s, %.2f, %d open; mended: %.2f", same.Verdict, same.Healthy, len(same.Unexplained), well.Healthy)
	}
	c := theCase(round(cases.AfterRepair, 800, 20, stuckOpen()))
	c.Tests = []cases.Test{{Kind: "combustion-gas", Stage: cases.AfterRepair, Result: "positive"}}
	gas := judge(t, c)
	if gas.Verdict != proof.NotFixed {
		t.Errorf("gas after the repair: %s, %.2f", gas.Verdict, gas.Healthy)
	}
	for lang, want := range map[say.Lang]string{say.EN: "Not fixed", say.DE: "Nicht behoben", say.ES: "No reparado"} {
		by, err := say.In(lang, units.Metric())
		if err != nil {
			t.Fatal(err)
		}
		if got := by.Say(gas.Sentence); !strings.HasPrefix(got, want) || strings.ContainsAny(got, "{}") {
			t.Errorf("%s: %q", lang, got)
		}
	}
}

func TestCodesAndChecksAreHeldAgainstEachOther(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()))
	c.Tests = []cases.Test{
		{Kind: "level", Stage: cases.BeforeRepair, State: "low"}, {Kind: "bubbles", Stage: cases.BeforeRepair, Seen: casetest.P(true)},
		{Kind: "level", Stage: cases.AfterRepair, State: "full"},
	}
	p := judge(t, c)
	if len(p.Tests) != 2 || p.Tests[0].AfterOutcome != evidence.Pass || p.Tests[0].BeforeOutcome != "low" || p.Tests[1].After != -1 {
		t.Errorf("tests %+v", p.Tests)
	}
	if p.Codes.Read || len(p.Repeat) != 2 { // the bubbles and the codes
		t.Errorf("codes %+v, repeat %v", p.Codes, p.Repeat)
	}
	none := c
	none.Codes = nil
	if p := judge(t, none); len(p.Repeat) != 1 {
		t.Errorf("without codes there are none to read again: %v", p.Repeat)
	}
	for _, back := range []string{"p0128", " P0128", "01 28"} { // the last as the vehicle sends it
		c.Repair.CodesAfter = []string{back}
		if p := judge(t, c); !slices.Equal(p.Codes.Back, []string{"P0128"}) || p.Verdict == proof.Fixed {
			t.Errorf("%q: codes %+v, %s", back, p.Codes, p.Verdict)
		}
	}
	c.Repair.CodesAfter = []string{cases.NoCodes}
	if p := judge(t, c); !p.Codes.Read || len(p.Codes.After) != 0 {
		t.Errorf("codes %+v", p.Codes)
	}
}

// Good temperatures don't vouch for a check that failed before and wasn't repeated: a cap, say,
// shows in none of them.
func TestAFailedCheckIsOwed(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()), round(cases.AfterRepair, 2500, 24, sound()))
	cap := func(stage cases.Stage, opens diagram.KPa) cases.Test {
		return cases.Test{Kind: "cap", Stage: stage, RatedKPa: casetest.P(diagram.KPa(110)), OpensKPa: &opens, Holds: casetest.P(opens > 90), VacuumValveOK: casetest.P(true)}
	}
	bench := cases.Test{Kind: "thermostat-bench", Stage: cases.AfterRepair, RatedOpensC: casetest.P(diagram.Celsius(88))}
	for _, w := range []float64{80, 86, 90, 94, 98, 103} {
		bench.Points = append(bench.Points, cases.BenchPoint{WaterC: casetest.P(diagram.Celsius(w)), LiftMM: casetest.P(max(0, w-88) * 0.7), Heating: casetest.P(true)})
	}
	c.Tests = []cases.Test{bench}
	if p := judge(t, c); p.Verdict != proof.Fixed {
		t.Fatalf("%s, %.2f, %v", p.Verdict, p.Healthy, p.Unexplained)
	}
	c.Tests = append(c.Tests, cap(cases.BeforeRepair, 60))
	if p := judge(t, c); p.Verdict != proof.NotShown {
		t.Errorf("with a weak cap before: %s, repeat %v", p.Verdict, p.Repeat)
	}
	c.Tests = append(c.Tests, cap(cases.AfterRepair, 108))
	if p := judge(t, c); p.Verdict != proof.Fixed {
		t.Errorf("with the cap renewed: %s, %.2f", p.Verdict, p.Healthy)
	}
}

// Temperatures of a loop that a weak cap never moved prove no new one: its test does. Where the fault had shown itself, that it
// doesn't any more is enough (common practice, no source).
func TestWhatIsMeasuredMustTellOfTheFault(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, sound()), round(cases.AfterRepair, 800, 20, sound()), round(cases.AfterRepair, 2500, 24, sound()))
	c.Codes, c.Verdict.Cause = nil, "cap-weak"
	p := judge(t, c)
	if said := p.Sentence.String(); p.Verdict != proof.NotShown || !p.Mute || p.Telling != cases.CapTest || !strings.Contains(said, "cap") {
		t.Errorf("%s, mute %t, asks for %q: %q", p.Verdict, p.Mute, p.Telling, said)
	}
	c.Tests = []cases.Test{{Kind: cases.CapTest, Stage: cases.AfterRepair, RatedKPa: casetest.P(diagram.KPa(110)), OpensKPa: casetest.P(diagram.KPa(108)), Holds: casetest.P(true), VacuumValveOK: casetest.P(true)}}
	if p := judge(t, c); p.Mute || p.Telling != "" {
		t.Errorf("with the new cap tested: mute %t, asks for %q", p.Mute, p.Telling)
	}
	c = theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()))
	if p := judge(t, c); p.Mute || p.Telling != "" {
		t.Errorf("a thermostat that shows no more: mute %t, asks for %q", p.Mute, p.Telling)
	}
}

// A loop that still leaks isn't called not fixed and healthy in one breath: what was found is said.
func TestWhatWasFoundSpeaksBeforeTheChances(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()), round(cases.AfterRepair, 2500, 24, sound()))
	c.Tests = []cases.Test{{Kind: "pressure-hold", Stage: cases.AfterRepair, StartKPa: casetest.P(diagram.KPa(140)), EndKPa: casetest.P(diagram.KPa(100)), Minutes: casetest.P(5.0)}}
	p := judge(t, c)
	said := p.Sentence.String()
	if p.Verdict != proof.NotFixed || p.Healthy < 0.3 || !strings.Contains(said, "leaks") || strings.Contains(said, "%") {
		t.Errorf("%s, healthy %.2f: %q", p.Verdict, p.Healthy, said)
	}
}

func TestWarmUpsThatBeganAlikeArePaired(t *testing.T) {
	log := func(stage cases.Stage, start float64) cases.Log {
		l := cases.Log{Name: "warm-up", Stage: stage}
		for s := 0.0; s < 900; s += 5 {
			l.TimeS, l.EctC = append(l.TimeS, s), append(l.EctC, min(start+s*0.12, 88))
		}
		return l
	}
	c := theCase()
	c.Logs = []cases.Log{log(cases.BeforeRepair, 8), log(cases.AfterRepair, 60)}
	if p := judge(t, c); !slices.Equal(p.Logs, []proof.LogPair{{Before: -1, After: 1}, {Before: 0, After: -1}}) {
		t.Errorf("one that began cold and one that began warm: %+v", p.Logs)
	}
	c.Logs[1] = cases.Log{Name: "without coolant", Stage: cases.AfterRepair, TimeS: []float64{0, 5}, EngineRPM: []float64{800, 800}}
	if p := judge(t, c); !slices.Equal(p.Logs, []proof.LogPair{{Before: -1, After: 1}, {Before: 0, After: -1}}) || p.Measured {
		t.Errorf("one that tells no coolant's temperature: %+v", p.Logs)
	}
	c.Logs = []cases.Log{log(cases.BeforeRepair, 8), log(cases.AfterRepair, 12), log(cases.AfterRepair, 60)}
	p := judge(t, c)
	if !slices.Equal(p.Logs, []proof.LogPair{{Before: 0, After: 1}, {Before: -1, After: 2}}) || !p.Measured {
		t.Errorf("logs %+v", p.Logs)
	}
}
