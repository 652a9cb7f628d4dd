package diagnosis_test

import (
	"context"
	"fmt"
	"math/rand"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/cases/logfile"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
)

// byLogs judges a case by the curves of its logs and nothing else.
func (b bench) byLogs(t testing.TB, c *cases.Case) diagnosis.Ranking {
	t.Helper()
	plan, _ := diagnosis.PlanFor(c, cases.BeforeRepair)
	found := evidence.Findings{WarmUps: b.found(t, c).WarmUps}
	r := b.judge.Rank(&cases.Case{Loop: c.Loop, Site: c.Site, Logs: c.Logs}, found, plan, nil, diagnosis.Prior{Flat: true})
	for _, l := range diagnosis.LogPlans(c, found, cases.BeforeRepair) {
		crowd, err := b.crowds.Get(context.Background(), l.Plan, nil)
		if err != nil {
			t.Fatal(err)
		}
		r = r.WithLog(l, crowd)
	}
	return r
}

func (b bench) found(t testing.TB, c *cases.Case) evidence.Findings {
	t.Helper()
	analyst, err := evidence.New(b.table)
	if err != nil {
		t.Fatal(err)
	}
	return analyst.Analyse(c)
}

// Recorded drives of sound cars (open data, testdata/logs/README.md names the sources)
// don't speak for a fault of the thermostat against health.
func TestRecordedDrivesSpeakForASoundThermostat(t *testing.T) {
	b := newBench(t)
	b.crowds.Draws = 60
	for file, ambient := range map[string]diagram.Celsius{"cold_drive_full.csv": 11, "summer_town_drive.csv": 24} {
		read, err := logfile.FromFile(context.Background(), "../../testdata/logs/"+file, logfile.Options{})
		if err != nil {
			t.Fatal(err)
		}
		c := cases.Case{
			Loop: cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))},
			Site: cases.Site{AmbientC: &ambient}, Logs: []cases.Log{read.Log},
		}
		r := b.byLogs(t, &c)
		sound := chance(r, cases.Healthy)
		for _, fault := range []cases.Cause{"thermostat-stuck-open", "thermostat-stuck-closed", "thermostat-late", "thermostat-early"} {
			t.Logf("%s: %s %.3f, none %.3f", file, fault, chance(r, fault), sound)
			if chance(r, fault) > sound {
				t.Errorf("%s: %s is likelier than a sound loop", file, fault)
			}
		}
	}
}

// A warm-up that a hand wrote down without speeds says nothing of its pace. A driven car is at its rating in 5 to 12
// minutes on a mild day (testdata/trade/numbers.csv, WU1, common practice): no sensor that reads high and no loop that
// lacks coolant, as it was while such a car was taken to stand; where only the engine's speed is known it still may be driven.
func TestAWarmUpWithoutSpeedsMayHaveBeenDriven(t *testing.T) {
	b := newBench(t)
	b.crowds.Draws = 60
	for _, minutes := range []float64{6, 8, 12} {
		for _, rpm := range []float64{0, 1900} {
			l := cases.Log{Stage: cases.BeforeRepair}
			for at := 0.0; at <= 16; at++ {
				l.TimeS, l.EctC = append(l.TimeS, 60*at), append(l.EctC, min(18+(opensC-18)*at/minutes, opensC+2))
				if rpm > 0 {
					l.EngineRPM = append(l.EngineRPM, rpm)
				}
			}
			c := cases.Case{
				Loop: cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(opensC))},
				Site: cases.Site{AmbientC: casetest.P(diagram.Celsius(18))}, Logs: []cases.Log{l},
			}
			r := b.byLogs(t, &c)
			for _, fault := range []cases.Cause{"sensor-reads-high", "coolant-low-air", "thermostat-stuck-closed"} {
				if chance(r, fault) > chance(r, cases.Healthy) {
					t.Errorf("at its rating in %g min, rpm %g: %s %.3f, healthy %.3f", minutes, rpm, fault, chance(r, fault), chance(r, cases.Healthy))
				}
			}
		}
	}
}

// A warm-up of a car that no crowd was drawn from points at what is wrong with it, and not
// at all where the engine was warm: the faults that a warm-up shows (signatures F01, F02,
// F04 and F17, common practice).
func TestWarmUpPointsAtItsCause(t *testing.T) {
	b := newBench(t)
	rng := rand.New(rand.NewSource(5))
	for _, cause := range []cases.Cause{"thermostat-stuck-open", "thermostat-stuck-closed", "thermostat-early", "sensor-reads-low"} {
		among := 0
		const n = 4
		for i := 0; i < n; i++ {
			c := newOtherCar(t, rng, "outlet-thermostat").logged(t, cause, 30)
			r := b.byLogs(t, &c)
			place, _ := placeOf(answered{cause, r})
			t.Logf("%s: place %d of %d, %.2f", cause, place+1, len(r.Causes), chance(r, cause))
			if place < 5 {
				among++
			}
		}
		if among < n-1 {
			t.Errorf("%s is among the first five of %d in %d of %d warm-ups", cause, 24, among, n)
		}
	}
}

// logged is a case with a warm-up and a drive of the car, a row each two seconds.
func (o otherCar) logged(t testing.TB, cause cases.Cause, minutes float64) cases.Case {
	t.Helper()
	const airC = 12
	sim, err := physics.New(o.l, o.p, physics.Fault{Cause: string(cause), Severity: 0.4 + 0.6*o.rng.Float64(), Form: 0.6 * o.rng.Float64()},
		physics.Conditions{AmbientC: airC, Coolant: coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50}})
	if err != nil {
		t.Fatal(err)
	}
	l := cases.Log{Name: fmt.Sprint("warm-up, ", cause), Stage: cases.BeforeRepair}
	for _, way := range []physics.Stage{o.p.Idle(4*60, 0.5), o.p.Drive((minutes-10)*60, 0, 45, 0.5), o.p.Idle(6*60, 0.5)} {
		step := way
		step.Seconds = 2
		for s := 0.0; s < way.Seconds; s += step.Seconds {
			if err := sim.Run(step, nil); err != nil {
				t.Fatal(err)
			}
			l.TimeS = append(l.TimeS, sim.Seconds())
			l.EctC = append(l.EctC, float64(sim.ECT())+0.5*o.rng.NormFloat64())
			l.EngineRPM, l.SpeedKmh = append(l.EngineRPM, way.RPM), append(l.SpeedKmh, way.SpeedKmh)
		}
	}
	opens, air := diagram.Celsius(*o.p.RatingC(o.l)), diagram.Celsius(airC)
	return cases.Case{Loop: cases.Loop{Layout: o.l.ID, ThermostatOpensC: &opens, Fan: "electric"}, Site: cases.Site{AmbientC: &air}, Logs: []cases.Log{l}}
}

// What a hand wrote, a row a minute, tells the same as the scan tool's record of the same
// warm-up: the car was driven in between too.
func TestARowAMinuteTellsTheSame(t *testing.T) {
	b := newBench(t)
	c := newOtherCar(t, rand.New(rand.NewSource(8)), "outlet-thermostat").logged(t, "thermostat-early", 30)
	whole := b.byLogs(t, &c)
	l := &c.Logs[0]
	thin := cases.Log{Name: l.Name, Stage: l.Stage}
	for i := 0; i < len(l.TimeS); i += 30 {
		thin.TimeS, thin.EctC = append(thin.TimeS, l.TimeS[i]), append(thin.EctC, l.EctC[i])
		thin.EngineRPM, thin.SpeedKmh = append(thin.EngineRPM, l.EngineRPM[i]), append(thin.SpeedKmh, l.SpeedKmh[i])
	}
	c.Logs[0] = thin
	hand := b.byLogs(t, &c)
	if a, h := whole.Causes[0], hand.Causes[0]; a.Cause != h.Cause || h.Probability < a.Probability-0.2 {
		t.Errorf("the record says %v, a row a minute %v", a, h)
	}
}
