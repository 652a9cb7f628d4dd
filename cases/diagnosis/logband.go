package diagnosis

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
)

// Band is what the coolant of healthy cars would do along a log: nine in ten of
// them.
type Band struct {
	TimeS       []float64
	LowC, HighC []float64
}

// The points of a log's crowd along it, and the longest log that has one.
const (
	logPoints = 24
	logMostS  = 4 * 3600
)

// logShare is one in how many of the usual draws a log is held against: one curve needs
// fewer cars than a loop's many points, and a long drive takes seconds to simulate.
const logShare = 2

// PlanForLog is what has to be simulated to know how cars would warm up as the
// log's car was run, from startS of the log on: idling, where the log doesn't
// say. It reports false where the layout isn't known or the log is too short.
func PlanForLog(c *cases.Case, l *cases.Log, startS float64) (Plan, bool) {
	p, ok := PlanFor(&cases.Case{Loop: c.Loop, Site: c.Site}, cases.BeforeRepair)
	n := len(l.TimeS)
	if !ok || n == 0 || !(l.TimeS[n-1]-startS > 120) {
		return Plan{}, false
	}
	step := min(l.TimeS[n-1]-startS, logMostS) / logPoints
	start := ensemble.Start{AmbientC: airOf(c, l)}
	for i := 0; i < logPoints; i++ {
		from := startS + step*float64(i)
		start.Stops = append(start.Stops, ensemble.Stop{Seconds: step, Blower: -1, Held: true,
			RPM: runAt(l.TimeS, l.EngineRPM, from, from+step), SpeedKmh: runAt(l.TimeS, l.SpeedKmh, from, from+step)})
	}
	p.Setting.Starts, p.Setting.Ahead = []ensemble.Start{start}, nil
	p.share = logShare
	return p, true
}

// airOf is the air outside: the case's, a round's, or what a cold log begins with.
func airOf(c *cases.Case, l *cases.Log) diagram.Celsius {
	if c.Site.AmbientC == nil {
		if slices.ContainsFunc(c.Rounds, func(r cases.Round) bool { return r.AmbientC != nil }) {
			return ambient(c, -1)
		}
		const cold = 35
		for _, column := range [][]float64{l.IntakeC, l.EctC} {
			if len(column) > 0 && column[0] < cold {
				return diagram.Celsius(math.Round(max(column[0], -40)))
			}
		}
	}
	return ambient(c, -1)
}

// runAt is how the car was run between two times: a column's mean, or what it said last
// before, where a hand wrote a row a minute; 0 where it says nothing.
func runAt(t, v []float64, from, to float64) float64 {
	if len(v) != len(t) {
		return 0
	}
	sum, n, last := 0.0, 0, 0.0
	for i, s := range t {
		switch {
		case math.IsNaN(v[i]) || s >= to:
		case s >= from:
			sum, n = sum+v[i], n+1
		default:
			last = v[i]
		}
	}
	if n == 0 {
		return last
	}
	return sum / float64(n)
}

// BandOf is the band of the healthy cars of a log's crowd, in the log's own seconds.
func BandOf(e *ensemble.Ensemble, startS float64) Band {
	b := Band{TimeS: []float64{startS}}
	air := float64(e.AmbientC(0))
	b.LowC, b.HighC = []float64{air - sensorSdK}, []float64{air + sensorSdK}
	at := startS
	for stop, s := range e.Setting.Starts[0].Stops {
		at += s.Seconds
		cars := newCrowdAt(e, stop, cases.Healthy)
		low, high := nineTenths(cars.over(cars.ect), sensorSdK)
		b.TimeS, b.LowC, b.HighC = append(b.TimeS, at), append(b.LowC, low), append(b.HighC, high)
	}
	return b
}
