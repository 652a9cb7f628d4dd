package diagnosis_test

import (
	"context"
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/say"
)

// bench is what a test judges with; crowds are small, for speed.
type bench struct {
	judge  *diagnosis.Judge
	crowds *diagnosis.Crowds
	table  *evidence.Table
}

func newBench(t testing.TB) bench {
	t.Helper()
	judge, err := diagnosis.NewJudge()
	if err != nil {
		t.Fatal(err)
	}
	table, err := evidence.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	return bench{judge, &diagnosis.Crowds{Draws: 30}, table}
}

// rank judges a case as the program does.
func (b bench) rank(t testing.TB, c cases.Case, prior diagnosis.Prior) diagnosis.Ranking {
	t.Helper()
	plan, known := diagnosis.PlanFor(&c, diagnosis.StageOf(&c))
	var crowd *ensemble.Ensemble
	var err error
	if known {
		if crowd, err = b.crowds.Get(context.Background(), plan, nil); err != nil {
			t.Fatal(err)
		}
	}
	analyst, err := evidence.New(diagnosis.Expecter{Table: b.table, Crowds: b.crowds})
	if err != nil {
		t.Fatal(err)
	}
	return b.judge.Rank(&c, analyst.Analyse(&c), plan, crowd, prior)
}

func chance(r diagnosis.Ranking, cause cases.Cause) float64 {
	if c, ok := r.Of(cause); ok {
		return c.Probability
	}
	return math.NaN()
}

// idle is a case with one round at warm idle, which holds those readings.
func idle(layout string, ect float64, shown map[diagram.Point]float64) cases.Case {
	r := cases.Round{
		Label: "warm idle", Stage: cases.BeforeRepair, MinutesSinceStart: casetest.P(25.0), EngineRPM: casetest.P(800.0),
		SpeedKmh: casetest.P(0.0), Heater: cases.HeaterFull, Fan: cases.FanOff, EctC: casetest.P(diagram.Celsius(ect)),
	}
	for _, p := range diagram.Points() {
		if v, ok := shown[p]; ok {
			r.Readings = append(r.Readings, cases.Reading{Point: p, ShownC: casetest.P(diagram.Celsius(v))})
		}
	}
	return cases.Case{
		ID: "idle", Loop: cases.Loop{Layout: layout, ThermostatOpensC: casetest.P(diagram.Celsius(88)), Fan: "electric"},
		Site: cases.Site{AmbientC: casetest.P(diagram.Celsius(20))}, Rounds: []cases.Round{r},
	}
}

// A case with nothing in it answers the prior, and says so.
func TestBlankCaseAnswersThePrior(t *testing.T) {
	b := newBench(t)
	for name, want := range map[string]float64{"flat": 1. / 24, "workshop": 0} {
		prior, err := diagnosis.ParsePrior(name)
		if err != nil {
			t.Fatal(err)
		}
		r := b.rank(t, cases.Case{}, prior)
		if !r.Blank || len(r.Causes) != 24 {
			t.Fatalf("%s: blank %v, %d causes", name, r.Blank, len(r.Causes))
		}
		for _, c := range r.Causes {
			if want > 0 && math.Abs(c.Probability-want) > 1e-9 {
				t.Errorf("%s: %s has %g, want %g", name, c.Cause, c.Probability, want)
			}
		}
		a := evidence.Answer{}
		diagnosis.Fill(&a, r, nil, nil)
		if len(a.Flags) != 1 || a.Flags[0].ID != "prior-only" || len(a.Causes) != 24 {
			t.Errorf("%s: flags %v, %d causes", name, a.Flags, len(a.Causes))
		}
	}
	if _, err := diagnosis.ParsePrior("hopeful"); err == nil {
		t.Error("a prior named hopeful is taken")
	}
}

// Patterns of the trade's table of faults (F01, F02, F05, F12, F17, F18, F25 of
// testdata/trade/signatures.csv; published patterns, numbers common practice)
// lead to their cause, the chances sum to 1, and each has its reasons.
func TestPatternsOfTheTrade(t *testing.T) {
	b := newBench(t)
	for _, tt := range []struct {
		want  cases.Cause
		ect   float64
		shown map[diagram.Point]float64
	}{
		{"thermostat-stuck-open", 64, map[diagram.Point]float64{"housing": 63, "engine_out": 60, "rad_in": 59, "rad_out": 48, "heater_in": 60, "heater_out": 52}},
		{"thermostat-stuck-closed", 116, map[diagram.Point]float64{"housing": 115, "engine_out": 40, "rad_in": 24, "rad_out": 22, "bypass": 108, "heater_in": 109, "heater_out": 99}},
		{"heater-core-restricted", 89, map[diagram.Point]float64{"housing": 88, "engine_out": 85, "rad_in": 84, "rad_out": 48, "heater_in": 84, "heater_out": 45, "vent": 33}},
		{"sensor-reads-low", 62, map[diagram.Point]float64{"housing": 88, "engine_out": 85, "rad_in": 84, "rad_out": 50, "heater_in": 84, "heater_out": 76}},
		{"sensor-reads-high", 108, map[diagram.Point]float64{"housing": 88, "engine_out": 85, "rad_in": 84, "rad_out": 50, "heater_in": 84, "heater_out": 76}},
		{"heater-air-side", 89, map[diagram.Point]float64{"housing": 88, "engine_out": 85, "rad_in": 84, "rad_out": 48, "heater_in": 84, "heater_out": 81, "vent": 26}},
	} {
		r := b.rank(t, idle("outlet-thermostat", tt.ect, tt.shown), diagnosis.Prior{})
		r.Explain(1)
		first, sum := r.Causes[0], 0.0
		for _, c := range r.Causes {
			sum += c.Probability
		}
		if first.Cause != tt.want || !(first.Probability > 0.3) || math.Abs(sum-1) > 1e-9 {
			t.Errorf("%s: first %s with %.2f, sum %g", tt.want, first.Cause, first.Probability, sum)
		}
		if len(first.For) == 0 || !(first.For[0].Factor >= 1.25) {
			t.Errorf("%s: nothing speaks for it", tt.want)
		}
		for i := 1; i < len(first.For); i++ {
			if first.For[i].Factor > first.For[i-1].Factor {
				t.Errorf("%s: reasons out of order: %v", tt.want, first.For)
			}
		}
	}
}

// A return hotter than its supply is a reading to repeat (IR9: readings repeat
// within 3 K, common practice): it flags, and moves no cause.
func TestContradictionIsNoCause(t *testing.T) {
	b := newBench(t)
	shown := map[diagram.Point]float64{"engine_out": 85, "rad_in": 84, "rad_out": 48}
	before := b.rank(t, idle("outlet-thermostat", 89, shown), diagnosis.Prior{})
	shown["heater_in"], shown["heater_out"] = 60, 85
	c := idle("outlet-thermostat", 89, shown)
	after := b.rank(t, c, diagnosis.Prior{})
	for _, was := range before.Causes {
		if now := chance(after, was.Cause); math.Abs(now-was.Probability) > 1e-9 {
			t.Errorf("%s went from %g to %g", was.Cause, was.Probability, now)
		}
	}
	analyst, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	told := false
	for _, f := range analyst.Analyse(&c).Flags {
		told = told || f.ID == "reading-impossible"
	}
	if !told {
		t.Error("nothing asks to read it again")
	}
}

// What was measured after the repair has no part in the causes before it.
func TestStagesAreKeptApart(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 64, map[diagram.Point]float64{"rad_in": 59, "rad_out": 48})
	before := b.rank(t, c, diagnosis.Prior{})
	mended := idle("outlet-thermostat", 89, map[diagram.Point]float64{"rad_in": 84, "rad_out": 45}).Rounds[0]
	mended.Stage = cases.AfterRepair
	c.Rounds = append(c.Rounds, mended)
	c.Tests = append(c.Tests, cases.Test{Kind: "combustion-gas", Stage: cases.AfterRepair, Result: "positive"})
	after := b.rank(t, c, diagnosis.Prior{})
	for _, was := range before.Causes {
		if now := chance(after, was.Cause); now != was.Probability {
			t.Errorf("%s went from %g to %g", was.Cause, was.Probability, now)
		}
	}
	c.Rounds, c.Tests = c.Rounds[1:], nil
	if got := diagnosis.StageOf(&c); got != cases.AfterRepair {
		t.Errorf("with a round after the repair alone the stage is %s", got)
	}
}

// A test speaks louder than the prior: published proofs of a leak into the
// cylinder (M16, T23).
func TestTestsSpeak(t *testing.T) {
	b := newBench(t)
	c := idle("inlet-thermostat", 95, map[diagram.Point]float64{"engine_out": 90, "rad_in": 88, "rad_out": 60})
	c.Complaint.Symptoms = []cases.Symptom{"coolant-loss"}
	was := chance(b.rank(t, c, diagnosis.Prior{}), "combustion-leak")
	c.Tests = []cases.Test{{Kind: "combustion-gas", Stage: cases.BeforeRepair, Result: "positive"}}
	r := b.rank(t, c, diagnosis.Prior{})
	if r.Causes[0].Cause != "combustion-leak" || !(r.Causes[0].Probability > 2*was) {
		t.Errorf("gas found: first is %s with %.2f; combustion leak had %.2f", r.Causes[0].Cause, r.Causes[0].Probability, was)
	}
	for _, n := range b.judge.Next(r) {
		if n.Check.Check == "combustion-gas" {
			t.Error("the gas test is named again")
		}
	}
}

// The notebook's own confirmed cases move the prior, more the more they are.
func TestConfirmedCasesMoveThePrior(t *testing.T) {
	b := newBench(t)
	few := b.rank(t, cases.Case{}, diagnosis.Prior{Confirmed: map[cases.Cause]int{"pump-weak": 5}})
	many := b.rank(t, cases.Case{}, diagnosis.Prior{Confirmed: map[cases.Cause]int{"pump-weak": 500}})
	none := chance(b.rank(t, cases.Case{}, diagnosis.Prior{}), "pump-weak")
	if f, m := chance(few, "pump-weak"), chance(many, "pump-weak"); !(none < f && f < 0.2 && m > 0.8) {
		t.Errorf("pump-weak: %.2f without, %.2f with 5, %.2f with 500", none, f, m)
	}
}

// A part is at fault only where there is one. A thermostat's heater has its chance among all cars on the
// heated ones alone (by the rule of Bayes, P(fault | heated) = P(fault)/P(heated)); a fan that a belt
// always turns can't stick on. Without the part there is left what a slip in the loop's data leaves; all
// causes alike stay alike.
func TestAPartIsAtFaultWhereThereIsOne(t *testing.T) {
	b := newBench(t)
	against := func(cause cases.Cause, l cases.Loop, p diagnosis.Prior) float64 {
		r := b.rank(t, cases.Case{Loop: l}, p)
		return chance(r, cause) / chance(r, "pump-weak")
	}
	heater, on, off := cases.Cause("thermostat-heater-fault"), cases.Cause("fan-always-running"), cases.Cause("fan-not-running")
	for _, tt := range []struct {
		cause cases.Cause
		loop  cases.Loop
		want  float64 // times as likely as among all cars
	}{
		{heater, cases.Loop{Layout: "heated-thermostat"}, 3}, // one car in three has it: judgement
		{heater, cases.Loop{Layout: "inlet-thermostat"}, 0.02},
		{on, cases.Loop{Fan: "fixed"}, 0.02}, {off, cases.Loop{Fan: "fixed"}, 1},
		{on, cases.Loop{Fan: "none"}, 0.02}, {off, cases.Loop{Fan: "none"}, 0.02},
		{on, cases.Loop{Fan: "viscous"}, 1}, {off, cases.Loop{Fan: "electric"}, 1},
	} {
		if got := against(tt.cause, tt.loop, diagnosis.Prior{}) / against(tt.cause, cases.Loop{}, diagnosis.Prior{}); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s on %s %s: %.3f times as likely as among all cars, want %g", tt.cause, tt.loop.Layout, tt.loop.Fan, got, tt.want)
		}
	}
	if got := against(heater, cases.Loop{Layout: "heated-thermostat"}, diagnosis.Prior{Flat: true}); math.Abs(got-1) > 1e-9 {
		t.Errorf("all causes alike: %.2f times as likely as a pump", got)
	}
}

// Next checks come in the order of what they tell by minute, none promises more
// than there is doubt, and each that opens the loop carries its caution.
func TestNextChecks(t *testing.T) {
	b := newBench(t)
	for _, c := range []cases.Case{
		{}, idle("outlet-thermostat", 108, map[diagram.Point]float64{"rad_in": 100, "rad_out": 60}),
	} {
		r := b.rank(t, c, diagnosis.Prior{})
		doubt := 0.0
		for _, cause := range r.Causes {
			doubt -= cause.Probability * math.Log2(cause.Probability)
		}
		next := b.judge.Next(r)
		if len(next) < 5 {
			t.Errorf("%s: %d checks", c.ID, len(next))
		}
		point := false
		for i, n := range next {
			if n.Bits > doubt || n.Minutes <= 0 || i > 0 && n.PerMinute() > next[i-1].PerMinute() {
				t.Errorf("%s: %s tells %.2f bits of %.2f in %g min", c.ID, n.Title(), n.Bits, doubt, n.Minutes)
			}
			if said := n.Words().String(); n.OpensSystem && !strings.Contains(said, n.Caution().String()) {
				t.Errorf("%s: opens the system without a caution: %s", n.Title(), said)
			}
			point = point || n.Point != ""
		}
		if want := len(c.Rounds) > 0; point != want {
			t.Errorf("%s: a hose to read is named: %v, want %v", c.ID, point, want)
		}
	}
}

// A lamp that is lit has its code read before a part is taken out (regulation R1 and R4 has the light lit by
// a stored code; four minutes: common practice, no source). Codes that are noted aren't read again, nor are
// those of a car without a lamp, whose list may be empty because they were read.
func TestALitLampHasItsCodesRead(t *testing.T) {
	b := newBench(t)
	at := func(c cases.Case) (place int, bits float64) {
		next := b.judge.Next(b.rank(t, c, diagnosis.Prior{}))
		i := slices.IndexFunc(next, func(n diagnosis.Check) bool { return n.Check.Check == likelihood.ReadCodes })
		if i < 0 {
			return i, 0
		}
		return i, next[i].Bits
	}
	lit := idle("outlet-thermostat", 88, map[diagram.Point]float64{"rad_in": 82, "rad_out": 55})
	lit.Complaint.Symptoms = []cases.Symptom{"warning-light"}
	if i, bits := at(lit); i < 0 || i > 2 || bits < 0.1 {
		t.Errorf("a lamp and a round that shows nothing: read the codes stands at %d with %.2f bits", i, bits)
	}
	noted := lit
	noted.Codes = []cases.Code{{Code: "P0128", State: "stored"}}
	dark := lit
	dark.Complaint.Symptoms = []cases.Symptom{"cabin-heat-poor"}
	for name, c := range map[string]cases.Case{"noted": noted, "no lamp": dark} {
		if i, _ := at(c); i >= 0 {
			t.Errorf("%s: to read the codes is still advised", name)
		}
	}
}

// What an engine must not do isn't advised (common practice): run without coolant, or be
// driven when it gets hot standing (FN1, published, and 5 K: F07), or held at speed far over its rating.
func TestNothingIsAdvisedThatHarms(t *testing.T) {
	b := newBench(t)
	advised := func(c cases.Case) (all []string) {
		for _, n := range b.judge.Next(b.rank(t, c, diagnosis.Prior{})) {
			all = append(all, n.Check.Check)
		}
		return all
	}
	warm, hot := idle("inlet-thermostat", 91, map[diagram.Point]float64{"rad_in": 86}), idle("inlet-thermostat", 108, map[diagram.Point]float64{"rad_in": 100})
	if got := advised(warm); !slices.Contains(got, likelihood.AfterRoad) || !slices.Contains(got, likelihood.HotIdle) {
		t.Errorf("warm: %v", got)
	}
	if got := advised(hot); slices.Contains(got, likelihood.AfterRoad) || slices.Contains(got, likelihood.HotIdle) || slices.Contains(got, likelihood.RaisedIdle) {
		t.Errorf("hot, and told to switch off: %v", got)
	}
	red := idle("inlet-thermostat", 118, map[diagram.Point]float64{"rad_in": 110})
	red.Rounds = append(red.Rounds, cases.Round{Label: "begun", Stage: cases.BeforeRepair})
	if got := advised(red); slices.Contains(got, likelihood.RaisedIdle) || slices.Contains(got, "hose-look") {
		t.Errorf("after a round at 118 °C and one that is only begun: %v", got)
	}
	if got := advised(warm); !slices.Contains(got, "combustion-gas") {
		t.Errorf("with coolant no test for combustion gas: %v", got)
	}
	warm.Tests = []cases.Test{{Kind: "level", Stage: cases.BeforeRepair, State: "empty"}}
	for _, check := range append(likelihood.Walks(), "hose-look", "heater-flow", "combustion-gas") { // gas is drawn at idle: M16, T23
		if slices.Contains(advised(warm), check) {
			t.Errorf("without coolant %s is advised", check)
		}
	}
	milky := idle("inlet-thermostat", 91, map[diagram.Point]float64{"rad_in": 86})
	milky.Complaint.Symptoms = []cases.Symptom{"oil-milky"}
	for _, n := range b.judge.Next(b.rank(t, milky, diagnosis.Prior{})) {
		if n.RunsEngine {
			t.Errorf("with milky oil %s is advised, which runs the engine", n.Check.Check)
		}
	}
	if got := advised(milky); !slices.Contains(got[:3], "pressure-hold") { // a drop without a wet spot lies within: V7, V8, M10, published
		t.Errorf("with milky oil: %v, want the pressure test among the first", got)
	}
}

// Who found the coolant low is told to fill up before the engine runs for a check (common practice, no source), and
// no longer once it is full.
func TestALowLevelIsFilledFirst(t *testing.T) {
	b := newBench(t)
	c := idle("inlet-thermostat", 91, map[diagram.Point]float64{"rad_in": 86})
	c.Tests = []cases.Test{{Kind: cases.LevelTest, Stage: cases.BeforeRepair, State: "low"}}
	for _, low := range []bool{true, false} {
		runs := 0
		for _, n := range b.judge.Next(b.rank(t, c, diagnosis.Prior{})) {
			told := strings.Contains(say.English().Say(n.Caution()), "fill to the mark first")
			if told != (low && n.RunsEngine) {
				t.Errorf("level low %v: %s says so: %v", low, n.Check.Check, told)
			}
			if n.RunsEngine {
				runs++
			}
		}
		if runs == 0 || diagnosis.LevelLow(&c) != low {
			t.Errorf("level low %v: %d checks run the engine", low, runs)
		}
		c.Tests = append(c.Tests, cases.Test{Kind: cases.LevelTest, Stage: cases.BeforeRepair, State: "full"})
	}
}

// Expected ranges are the healthy crowd's for the round's conditions: at idle
// wide on the radiator, since the thermostat throttles (DT1, DT2 of
// testdata/trade/numbers.csv, common practice), and wholly the table's where the
// engine is hotter than any healthy one.
func TestExpectedRangesAreComputed(t *testing.T) {
	b := newBench(t)
	warm := idle("outlet-thermostat", 90, map[diagram.Point]float64{"rad_in": 84, "rad_out": 48})
	b.rank(t, warm, diagnosis.Prior{})
	x := diagnosis.Expecter{Table: b.table, Crowds: b.crowds}
	e := x.Expect(&warm, 0)
	drop, in := e.Deltas["across-radiator"], e.Points["rad_in"]
	if drop.Class != evidence.Computed || !(*drop.HighK > 35) || !(in.LowC > 30 && in.LowC < 84 && in.HighC > 84 && in.HighC < 100) {
		t.Errorf("across the radiator %v to %v (%s), into it %v to %v", *drop.LowK, *drop.HighK, drop.Class, in.LowC, in.HighC)
	}
	hot := idle("outlet-thermostat", 116, map[diagram.Point]float64{"rad_in": 108, "rad_out": 60})
	b.rank(t, hot, diagnosis.Prior{})
	if got, want := x.Expect(&hot, 0).Deltas["across-radiator"], b.table.Expect(&hot, 0).Deltas["across-radiator"]; !reflect.DeepEqual(got, want) {
		t.Errorf("on an engine at 116 °C: %v, want the table's %v", got, want)
	}
	lone := idle("inlet-thermostat", 90, map[diagram.Point]float64{"rad_in": 61})
	lone.Rounds[0].EctC = nil
	b.rank(t, lone, diagnosis.Prior{})
	bare := lone
	bare.Rounds = []cases.Round{lone.Rounds[0]}
	bare.Rounds[0].Readings = nil
	if got, want := x.Expect(&lone, 0).Points["rad_in"], x.Expect(&bare, 0).Points["rad_in"]; got.LowC != want.LowC || got.HighC != want.HighC {
		t.Errorf("read by itself, a hose behind the thermostat makes its own range %v to %v, want %v to %v", got.LowC, got.HighC, want.LowC, want.HighC)
	}
	lies := idle("outlet-thermostat", 121, map[diagram.Point]float64{"housing": 88, "rad_in": 84, "rad_out": 48})
	b.rank(t, lies, diagnosis.Prior{})
	told := x.Expect(&lies, 0)
	lies.Rounds[0].EctC = nil
	if got, want := told.Points["rad_in"], x.Expect(&lies, 0).Points["rad_in"]; got.Class != evidence.Computed || got.LowC != want.LowC || got.HighC != want.HighC {
		t.Errorf("beside a sensor that shows 33 K more than the housing: %v to %v (%s), want the housing's %v to %v", got.LowC, got.HighC, got.Class, want.LowC, want.HighC)
	}
	cold := x.Expect(&cases.Case{Rounds: make([]cases.Round, 1)}, 0)
	if cold.Points == nil {
		t.Error("without a layout the table isn't asked")
	}
}

// The first hose of a walk that is begun asks for no other crowd: who types on isn't made to wait.
func TestAWalkBegunKeepsItsCrowd(t *testing.T) {
	c := idle("inlet-thermostat", 91, map[diagram.Point]float64{"rad_in": 86})
	c.Rounds = append(c.Rounds, cases.Round{Label: "Raised idle", Stage: cases.BeforeRepair, EngineRPM: casetest.P(2500.0)})
	begun, _ := diagnosis.PlanFor(&c, cases.BeforeRepair)
	c.Rounds[1].Readings = []cases.Reading{{Point: diagram.RadIn, ShownC: casetest.P(diagram.Celsius(88))}}
	if walked, _ := diagnosis.PlanFor(&c, cases.BeforeRepair); walked.Setting.Key() != begun.Setting.Key() {
		t.Errorf("begun: %s\nwith a reading: %s", begun.Setting.Key(), walked.Setting.Key())
	}
}

// Crowds are simulated once, the last few are kept, and giving up keeps
// nothing.
func TestCrowdsAreKept(t *testing.T) {
	var k diagnosis.Crowds
	k.Draws = 21
	c := idle("inlet-thermostat", 90, nil)
	plan, _ := diagnosis.PlanFor(&c, cases.BeforeRepair)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := k.Get(ctx, plan, nil); !errors.Is(err, context.Canceled) || k.Kept(plan) != nil {
		t.Errorf("given up: %v, kept %v", err, k.Kept(plan) != nil)
	}
	var parts []float64
	e, err := k.Get(context.Background(), plan, func(_ *ensemble.Ensemble, part float64) { parts = append(parts, part) })
	if err != nil || e.N != 21 || len(parts) != 2 || parts[0] != 20./21 || parts[1] != 1 {
		t.Fatalf("%v, %d draws, told at %v", err, e.N, parts)
	}
	if again, _ := k.Get(context.Background(), plan, nil); again != e {
		t.Error("simulated twice")
	}
	for i := 0; i < 12; i++ {
		c.Site.AmbientC = casetest.P(diagram.Celsius(i))
		other, _ := diagnosis.PlanFor(&c, cases.BeforeRepair)
		other = other.Healthy()
		if _, err := k.Get(context.Background(), other, nil); err != nil {
			t.Fatal(err)
		}
	}
	if k.Kept(plan) != nil {
		t.Error("the oldest of 13 is kept")
	}
}

// Whatever a case holds, it is answered: unknown layout, no minutes, odd
// strengths, rounds against the clock.
func TestOddCasesAreAnswered(t *testing.T) {
	b := newBench(t)
	odd := idle("outlet-thermostat", 90, map[diagram.Point]float64{"rad_in": 80})
	odd.Loop.Coolant = cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(97.0)}
	odd.Loop.CapKPa, odd.Loop.ThermostatOpensC = casetest.P(diagram.KPa(900)), casetest.P(diagram.Celsius(-5))
	odd.Site.AltitudeM, odd.Site.AmbientC = casetest.P(diagram.Metre(9000)), casetest.P(diagram.Celsius(-60))
	back := odd.Rounds[0]
	back.MinutesSinceStart, back.EngineRPM, back.SpeedKmh = casetest.P(3.0), casetest.P(9e9), casetest.P(900.0)
	bare := cases.Round{Gauge: "red"}
	odd.Rounds = append(odd.Rounds, back, bare)
	for _, c := range []cases.Case{odd, {Rounds: []cases.Round{bare}}, {Loop: cases.Loop{Layout: "of-another-world"}, Rounds: odd.Rounds}} {
		r := b.rank(t, c, diagnosis.Prior{})
		r.Explain(24)
		a := evidence.Answer{}
		diagnosis.Fill(&a, r, b.judge.Next(r), b.judge.Beside(r))
		text, err := json.Marshal(a)
		if err != nil || strings.Contains(string(text), "NaN") {
			t.Errorf("%v: %s", err, text)
		}
	}
}

// A log that begins cold lies in the band of healthy cars that are run alike
// where it is one of theirs, and the band has come to the rating by its end
// (WU1: 5 to 12 min of driving, common practice).
func TestBandOfALog(t *testing.T) {
	b := newBench(t)
	c := idle("inlet-thermostat", 90, nil)
	l := cases.Log{}
	for s := 0.0; s <= 1500; s += 5 {
		l.TimeS, l.EctC = append(l.TimeS, s), append(l.EctC, 20)
		l.EngineRPM, l.SpeedKmh = append(l.EngineRPM, 2200), append(l.SpeedKmh, 70)
	}
	plan, ok := diagnosis.PlanForLog(&c, &l, 0)
	if !ok {
		t.Fatal("no plan")
	}
	crowd, err := b.crowds.Get(context.Background(), plan, nil)
	if err != nil {
		t.Fatal(err)
	}
	band := diagnosis.BandOf(crowd, 0)
	last := len(band.TimeS) - 1
	if band.TimeS[0] != 0 || band.TimeS[last] != 1500 || !(band.LowC[last] > 77 && band.HighC[last] < 105) {
		t.Errorf("from %g s to %g s, ends at %g to %g °C", band.TimeS[0], band.TimeS[last], band.LowC[last], band.HighC[last])
	}
	for i := range band.TimeS {
		if band.LowC[i] > band.HighC[i] || band.TimeS[i] < 240 && band.HighC[i] > 85 {
			t.Errorf("at %g s: %g to %g °C", band.TimeS[i], band.LowC[i], band.HighC[i])
		}
	}
	l.EctC[0] = 8
	if other, _ := diagnosis.PlanForLog(&c, &l, 0); other.Setting.Starts[0].AmbientC != 8 {
		t.Errorf("an engine of 8 °C began in air of %g °C", float64(other.Setting.Starts[0].AmbientC))
	}
	c.Loop.Layout = "of-another-world"
	if _, ok := diagnosis.PlanForLog(&c, &l, 0); ok {
		t.Error("a loop that isn't known has a band")
	}
}

// Air can't leave a radiator warmer than its coolant came in, whatever the model's error: nothing
// that can't be is called expected; 15 K are for a probe that errs in moving air (judgement).
func TestNoAirIsExpectedHotterThanTheCoolant(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 95, nil)
	c.Rounds[0].Fan = cases.FanOn
	plan, _ := diagnosis.PlanFor(&c, cases.BeforeRepair)
	if _, err := b.crowds.Get(context.Background(), plan, nil); err != nil {
		t.Fatal(err)
	}
	want := diagnosis.Expecter{Table: b.table, Crowds: b.crowds}.Expect(&c, 0)
	through, in, air := want.Deltas["air-through-radiator"], want.Points[diagram.RadIn], *c.Site.AmbientC
	if most := in.HighC.Minus(air) + 15; through.HighK == nil || *through.HighK > most {
		t.Errorf("up to %v K are expected, of coolant at %v °C at most in air of %v °C", *through.HighK, in.HighC, air)
	}
}

// What no coolant can be is no evidence: a slip of a digit leaves the ranking as it is without.
func TestNoCoolantOf390(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 91, map[diagram.Point]float64{"rad_in": 80, "rad_out": 60})
	without, slip := c, c
	without.Rounds = slices.Clone(c.Rounds)
	without.Rounds[0].EctC = nil
	slip.Rounds = slices.Clone(c.Rounds)
	slip.Rounds[0].EctC = casetest.P(diagram.Celsius(390))
	want, got := b.rank(t, without, diagnosis.Prior{}), b.rank(t, slip, diagnosis.Prior{})
	for i := range want.Causes {
		if want.Causes[i].Cause != got.Causes[i].Cause || math.Abs(want.Causes[i].Probability-got.Causes[i].Probability) > 1e-9 {
			t.Errorf("place %d: %v with 390 °C, %v without", i, got.Causes[i], want.Causes[i])
			break
		}
	}
}

// Cars aren't simulated on a day that never was: 90 °C is more than the air outside was ever found to have (56.7 °C,
// published, the World Meteorological Organization's archive of extremes).
func TestNoCarsOnADayThatNeverWas(t *testing.T) {
	outside := diagram.Celsius(90)
	c := cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{AmbientC: &outside, EctC: casetest.P(diagram.Celsius(91))}}}
	plan, known := diagnosis.PlanFor(&c, cases.BeforeRepair)
	if !known || len(plan.Setting.Starts) != 1 || plan.Setting.Starts[0].AmbientC != evidence.UsualAmbientC {
		t.Errorf("on a day of 90 °C: %+v", plan.Setting.Starts)
	}
}
