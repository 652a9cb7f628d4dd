package evidence

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// SensorMostC is the most that a sensor's value is believed to be coolant's: from
// there on its circuit is cut or shorted (SN2, published, V35).
const SensorMostC diagram.Celsius = 130

// hottest is the hottest coolant that one side of the repair tells of, and where.
type hottest struct {
	c     diagram.Celsius
	where say.Text
	ok    bool
}

func (h *hottest) take(c diagram.Celsius, where say.Text) {
	if !h.ok || c > h.c {
		*h = hottest{c, where, true}
	}
}

// place says which round it is: by its name where it has one, since nothing else numbers the rounds for who reads.
func (m *moment) place() say.Text {
	if name := m.round.Title(); !name.Empty() {
		return say.Of("hottest.round-named", name)
	}
	return say.Of("hottest.round", m.i+1)
}

// hottestOf looks at the rounds, the freeze frames (frozen before the repair) and the logs of a stage. Where the gun
// shows that the sensor reads too high, what it said elsewhere doesn't count.
func (a *Analyst) hottestOf(c *cases.Case, all []*moment, ups []WarmUp, stage cases.Stage) hottest {
	var h hottest
	for _, m := range all {
		if !stage.Holds(m.round.Stage) {
			continue
		}
		if t, ok := m.hottestLiquid(); ok {
			h.take(t, m.place())
		}
	}
	if sensorTooHigh(all, stage) {
		return h
	}
	for _, code := range c.Codes {
		if t := code.FreezeFrame.EctC; stage == cases.BeforeRepair && t != nil && *t <= SensorMostC && !a.codes.ofCoolantSensor(code.Code) {
			h.take(*t, say.Of("hottest.frame", cases.InLetters(code.Code)))
		}
	}
	for _, w := range ups {
		if w.HottestC != nil && stage.Holds(w.Stage) {
			h.take(*w.HottestC, logPlace(w.Log))
		}
	}
	return h
}

// hottestLiquid is the hottest coolant of the round, by gun or sensor.
func (m *moment) hottestLiquid() (diagram.Celsius, bool) {
	best, ok := m.hottest(slices.DeleteFunc(diagram.Points(), diagram.Point.Air)...)
	if e := m.engine.c; e != nil && (!ok || *e > best.TrueC) {
		return *e, true
	}
	return best.TrueC, ok
}

// sensorTooHigh reports whether the gun shows in a round of the stage that the sensor tells too much.
func sensorTooHigh(all []*moment, stage cases.Stage) bool {
	return slices.ContainsFunc(all, func(m *moment) bool {
		return stage.Holds(m.round.Stage) && m.engine.lies && m.engine.c != nil && *m.round.EctC > *m.engine.c
	})
}

// ofCoolantSensor reports whether a code is about the coolant's sensor itself,
// whose word it then isn't worth taking.
func (codes Codes) ofCoolantSensor(code string) bool {
	return slices.Contains(codes[cases.InLetters(code)].Parts, "coolant-sensor")
}

func logPlace(name string) say.Text {
	if name == "" {
		return say.Of("hottest.log")
	}
	return say.Of("hottest.log-named", cases.LogTitle(name))
}

// besideS is how near in time two samples stand beside each other (judgement: a scan tool's come each second
// or so).
const besideS = 15

// HeldC is the most that two samples beside each other reach: one alone among them may be a loose contact's.
// What somebody wrote down each minute was looked at, and stands for itself. Rows that lack the coolant stand between none.
// It is false without any.
func HeldC(l *cases.Log) (c diagram.Celsius, ok bool) {
	var times, values []float64
	for i, v := range l.EctC {
		if !math.IsNaN(v) {
			times, values = append(times, l.TimeS[i]), append(values, v)
		}
	}
	most := math.Inf(-1)
	take := func(a, b float64) {
		if v := min(a, b); v > most && max(a, b) <= float64(SensorMostC) {
			most = v
		}
	}
	near := func(i int) bool { // to the sample before it
		return i > 0 && i < len(values) && times[i]-times[i-1] <= besideS
	}
	for i, v := range values {
		switch before, after := near(i), near(i+1); {
		case before:
			take(values[i-1], v)
		case !after:
			take(v, v)
		}
	}
	return diagram.Celsius(most), !math.IsInf(most, -1)
}
