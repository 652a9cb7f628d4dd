package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// asked is the next check of that kind, if it is asked for.
func asked(next []diagnosis.Check, kind cases.TestKind) (diagnosis.Check, bool) {
	i := slices.IndexFunc(next, func(c diagnosis.Check) bool { return c.Check.Check == string(kind) })
	if i < 0 {
		return diagnosis.Check{}, false
	}
	return next[i], true
}

// A lower hose that is sucked flat once it is cold has a vacuum valve behind it that stays shut (M17, published). A cap
// of which only the opening was noted is asked for again, for its valve; one that was tried whole isn't.
func TestWhatACheckLeftOpenIsAskedForAgain(t *testing.T) {
	b := newBench(t)
	yes, kPa := casetest.P(true), casetest.P(diagram.KPa(110))
	c := idle("inlet-thermostat", 90, map[diagram.Point]float64{"engine_out": 88, "rad_in": 84, "rad_out": 55})
	c.Complaint.Symptoms = []cases.Symptom{"coolant-loss"}
	next := func(tried ...cases.Test) []diagnosis.Check {
		c.Tests = tried
		return b.judge.Next(b.rank(t, c, diagnosis.Prior{}))
	}
	whole := cases.Test{Kind: cases.CapTest, RatedKPa: kPa, OpensKPa: kPa, Holds: yes, VacuumValveOK: yes}
	part := whole
	part.VacuumValveOK = nil
	fresh, _ := asked(next(), cases.CapTest)
	again, ok := asked(next(part), cases.CapTest)
	if said := again.Text().String(); !ok || !strings.Contains(said, "vacuum valve does not open") || strings.Contains(said, "too early") {
		t.Errorf("with the valve open: %v %q", ok, said)
	}
	if !(again.Bits < fresh.Bits) {
		t.Errorf("what is left tells %.4f bits, the whole %.4f", again.Bits, fresh.Bits)
	}
	if _, ok := asked(next(whole), cases.CapTest); ok {
		t.Error("a cap that was tried whole is asked for again")
	}
}

// A thermostat that passed in a pan isn't cleared (V15, published: it takes the vehicle out of the system), but the pan
// won't prove it any more, and some other check is named.
func TestWhatPassedIsNoProofToCome(t *testing.T) {
	b := newBench(t)
	c := idle("inlet-thermostat", 62, map[diagram.Point]float64{"engine_out": 60, "rad_in": 58, "rad_out": 46, "heater_in": 58, "heater_out": 48})
	c.Site.AmbientC = casetest.P(diagram.Celsius(5))
	c.Complaint.Symptoms = []cases.Symptom{"gauge-low", "slow-warm-up", "cabin-heat-poor", "fuel-use-up"}
	road := c.Rounds[0]
	road.Label, road.MinutesSinceStart, road.SpeedKmh, road.EngineRPM, road.EctC = "road", casetest.P(40.0), casetest.P(80.0), casetest.P(2200.0), casetest.P(diagram.Celsius(58))
	c.Rounds = append(c.Rounds, road)
	c.Codes = []cases.Code{{Code: "P0128"}}
	if next := b.judge.Next(b.rank(t, c, diagnosis.Prior{})); len(next) == 0 || !next[0].Proof || next[0].Check.Check != string(cases.BenchTest) {
		t.Fatalf("no proof in a pan is asked for at first: %+v", next)
	}
	pan := cases.Test{Kind: cases.BenchTest, RatedOpensC: casetest.P(diagram.Celsius(88)), RatedLiftMM: casetest.P(8.0)}
	for _, at := range [][2]float64{{70, 0}, {80, 0}, {86, 0}, {90, 1.5}, {94, 5}, {98, 8}, {99, 8.2}} {
		pan.Points = append(pan.Points, cases.BenchPoint{WaterC: casetest.P(diagram.Celsius(at[0])), LiftMM: casetest.P(at[1]), Heating: casetest.P(true)})
	}
	c.Tests = []cases.Test{pan}
	r := b.rank(t, c, diagnosis.Prior{})
	next := b.judge.Next(r)
	if r.Causes[0].Probability < 0.99 || len(next) == 0 || slices.ContainsFunc(next, func(n diagnosis.Check) bool { return n.Proof }) {
		t.Errorf("%s at %.3f, bench %s: %+v", r.Causes[0].Cause, r.Causes[0].Probability, evidence.Outcome(&c, &c.Tests[0]), next)
	}
}
