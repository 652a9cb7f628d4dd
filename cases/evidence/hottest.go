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

// hottest is the hottest coolant that a case tells of, and where.
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

// hottestOf looks at the rounds, the freeze frames and the logs. Where the gun
// shows that the sensor reads too high, what it said elsewhere doesn't count.
func (a *Analyst) hottestOf(c *cases.Case, all []*moment) hottest {
	var h hottest
	for _, m := range all {
		if t, ok := m.hottestLiquid(); ok {
			h.take(t, say.Of("hottest.round", m.i+1))
		}
	}
	if slices.ContainsFunc(all, (*moment).sensorTooHigh) {
		return h
	}
	for _, code := range c.Codes {
		if t := code.FreezeFrame.EctC; t != nil && *t <= SensorMostC && !a.codes.ofCoolantSensor(code.Code) {
			h.take(*t, say.Of("hottest.frame", InLetters(code.Code)))
		}
	}
	for i := range c.Logs {
		l := &c.Logs[i]
		if t, ok := heldC(l.EctC); ok {
			h.take(t, logPlace(l))
		}
	}
	return h
}

// sensorTooHigh reports whether the gun shows that the sensor tells too much.
func (m *moment) sensorTooHigh() bool {
	return m.engine.lies && m.engine.c != nil && *m.round.EctC > *m.engine.c
}

// ofCoolantSensor reports whether a code is about the coolant's sensor itself,
// whose word it then isn't worth taking.
func (codes Codes) ofCoolantSensor(code string) bool {
	return slices.Contains(codes[InLetters(code)].Parts, "coolant-sensor")
}

func logPlace(l *cases.Log) say.Text {
	if l.Name == "" {
		return say.Of("hottest.log")
	}
	return say.Of("hottest.log-named", cases.LogTitle(l.Name))
}

// heldC is the most that two samples in a row reach: one alone may be a loose
// contact's. It is false without any.
func heldC(ectC []float64) (diagram.Celsius, bool) {
	most := math.Inf(-1)
	for i := 1; i < len(ectC); i++ {
		if v := min(ectC[i-1], ectC[i]); v > most && max(ectC[i-1], ectC[i]) <= float64(SensorMostC) {
			most = v
		}
	}
	return diagram.Celsius(most), !math.IsInf(most, -1)
}
