package diagnosis_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
)

// A car that idled for four hours shows what it showed after one and a half (physics: nothing about it changes any
// more), so no more than that is simulated, and no technician waits for it.
func TestALongIdleRanksAsASteadyOne(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 76, map[diagram.Point]float64{"engine_out": 75, "rad_in": 72, "rad_out": 60, "heater_out": 63})
	at := func(minutes float64) (diagnosis.Ranking, float64) {
		c.Rounds[0].MinutesSinceStart = casetest.P(minutes)
		plan, _ := diagnosis.PlanFor(&c, cases.BeforeRepair)
		return b.rank(t, c, diagnosis.Prior{}), plan.Setting.Starts[0].Stops[0].Seconds
	}
	hour, _ := at(60)
	steady, most := at(90)
	long, taken := at(240)
	if most != taken {
		t.Errorf("%g s are simulated for four hours, %g s for one and a half", taken, most)
	}
	for i, was := range hour.Causes[:3] {
		if now := long.Causes[i]; was.Cause != now.Cause || math.Abs(was.Probability-now.Probability) > 0.03 {
			t.Errorf("after an hour %v, after four %v; after one and a half %v", was, now, steady.Causes[i])
		}
	}
}

// A warm-up's log of before the repair is evidence of its fault. Where the rounds are only of the proof, the causes are still
// judged by it and by the complaint: the proof says what the car is like now.
func TestALogOfBeforeTheRepairHoldsTheStage(t *testing.T) {
	log := cases.Log{TimeS: []float64{0, 60}, EctC: []float64{10, 20}}
	later := log
	later.Stage = cases.AfterRepair
	proved := []cases.Round{{Stage: cases.AfterRepair}}
	for _, tt := range []struct {
		c    cases.Case
		want cases.Stage
	}{
		{cases.Case{Logs: []cases.Log{log}, Rounds: proved}, cases.BeforeRepair},
		{cases.Case{Logs: []cases.Log{later}, Rounds: proved}, cases.AfterRepair},
		{cases.Case{Logs: []cases.Log{later}}, cases.AfterRepair},
		{cases.Case{}, cases.BeforeRepair},
	} {
		if got := diagnosis.StageOf(&tt.c); got != tt.want {
			t.Errorf("%d logs and %d rounds are judged by the stage %s, want %s", len(tt.c.Logs), len(tt.c.Rounds), got, tt.want)
		}
	}
}

// A round of the next day is of another cold start, though the air is the same and the minutes go on from those of the day
// before, or aren't noted: its engine isn't held against one that had been hot for a quarter of an hour.
func TestARoundOfAnotherDayIsOfAnotherStart(t *testing.T) {
	c := idle("outlet-thermostat", 90, map[diagram.Point]float64{"rad_in": 84})
	taken := time.Date(2026, 11, 25, 10, 0, 0, 0, time.UTC)
	c.Rounds[0].Taken = taken
	for _, tt := range []struct {
		after   time.Duration
		minutes *float64
		starts  int
	}{{5 * time.Minute, casetest.P(30.0), 1}, {24 * time.Hour, casetest.P(30.0), 2}, {24 * time.Hour, nil, 2}, {5 * time.Hour, nil, 1}} {
		next := c.Rounds[0]
		next.MinutesSinceStart, next.Taken = tt.minutes, taken.Add(tt.after)
		both := c
		both.Rounds = append(slices.Clone(c.Rounds), next)
		plan, _ := diagnosis.PlanFor(&both, cases.BeforeRepair)
		if got := len(plan.Setting.Starts); got != tt.starts {
			t.Errorf("two rounds %v apart are of %d starts, want %d", tt.after, got, tt.starts)
		}
		if tt.minutes != nil && tt.starts == 2 && plan.Setting.Starts[1].Stops[0].Seconds != 1800 {
			t.Errorf("the next day's round is %g s from cold", plan.Setting.Starts[1].Stops[0].Seconds)
		}
	}
}
