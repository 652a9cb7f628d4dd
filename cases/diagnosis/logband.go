package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/cases/evidence"
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

// idleMostRPM is what an engine idles at, at most, warm or cold: above it the car may be driven, where
// no speed is noted (judgement; a cold engine's fast idle is 1000 to 1300 rpm).
const idleMostRPM = 1300

// logShare is one in how many of the usual draws a log is held against: one curve needs
// fewer cars than a loop's many points, and a long drive takes seconds to simulate.
const logShare = 2

// PlanForLog is what has to be simulated to know how cars would warm up as the
// log's car was run, from startS of the log on: anyhow, where the log doesn't
// say. It reports false where the layout isn't known or the log is too short.
func PlanForLog(c *cases.Case, l *cases.Log, startS float64) (Plan, bool) {
	p, ok := PlanFor(&cases.Case{Loop: c.Loop, Site: c.Site}, cases.BeforeRepair)
	n := len(l.TimeS)
	if !ok || n == 0 || !(l.TimeS[n-1]-startS > 120) {
		return Plan{}, false
	}
	step := min(l.TimeS[n-1]-startS, logMostS) / logPoints
	start := ensemble.Start{AmbientC: airOf(c, l)}
	rpm, kmh := runAlong(l.TimeS, l.EngineRPM, startS, step), runAlong(l.TimeS, l.SpeedKmh, startS, step)
	for i := range rpm {
		start.Stops = append(start.Stops, ensemble.Stop{Seconds: step, Blower: -1, Held: true, RPM: rpm[i], SpeedKmh: kmh[i],
			Unsaid: !l.SpeedNoted() && (rpm[i] == 0 || rpm[i] > idleMostRPM)})
	}
	p.Setting.Starts, p.Setting.Ahead = []ensemble.Start{start}, nil
	p.share = logShare
	return p, true
}

// airOf is the air outside: the case's, a round's, or what a cold log begins with. No engine
// is much colder than its air: a log that begins so was written on another day.
func airOf(c *cases.Case, l *cases.Log) diagram.Celsius {
	air := ambient(c, -1)
	if evidence.AirNoted(c, -1) != nil && !(len(l.EctC) > 0 && l.EctC[0] < float64(air-otherDayK)) {
		return air
	}
	const cold = 35
	for _, column := range [][]float64{l.IntakeC, l.EctC} {
		if len(column) > 0 && column[0] < cold {
			return diagram.Celsius(math.Round(max(column[0], -40)))
		}
	}
	return air
}

// runAlong is how the car was run on the way to each point: a column's mean, or what it
// said last before, where a hand wrote a row a minute; 0 where it says nothing. Times
// rise, so that a long log is gone along once.
func runAlong(t, v []float64, startS, stepS float64) [logPoints]float64 {
	var out [logPoints]float64
	if len(v) != len(t) {
		return out
	}
	row, last := 0, 0.0
	for i := -1; i < logPoints; i++ { // first what was before the start
		sum, n := 0.0, 0
		for end := startS + stepS*float64(i+1); row < len(t) && t[row] < end; row++ {
			if !math.IsNaN(v[row]) {
				sum, n, last = sum+v[row], n+1, v[row]
			}
		}
		switch {
		case i < 0:
		case n == 0:
			out[i] = last
		default:
			out[i] = sum / float64(n)
		}
	}
	return out
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
