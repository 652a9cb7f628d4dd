package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram/physics/ensemble"
)

// Band is what the coolant of healthy cars would do along a log: nine in ten of
// them.
type Band struct {
	TimeS       []float64
	LowC, HighC []float64
}

// The band's points along a log, and the longest log that has one.
const (
	bandPoints = 24
	bandMostS  = 4 * 3600
)

// PlanForLog is what has to be simulated to know how healthy cars would warm up
// as the log's car was run, from StartS of the log on. It reports false where
// the layout isn't known, or the log doesn't say how the engine ran.
func PlanForLog(c *cases.Case, l *cases.Log, startS float64) (Plan, bool) {
	p, ok := PlanFor(&cases.Case{Loop: c.Loop, Site: c.Site}, cases.BeforeRepair)
	n := len(l.TimeS)
	if !ok || n == 0 || len(l.EngineRPM) != n || !(l.TimeS[n-1]-startS > 120) {
		return Plan{}, false
	}
	step := min(l.TimeS[n-1]-startS, bandMostS) / bandPoints
	start := ensemble.Start{AmbientC: p.Setting.Starts[0].AmbientC}
	for i := 0; i < bandPoints; i++ {
		from := startS + step*float64(i)
		stop := ensemble.Stop{Seconds: step, RPM: mean(l.TimeS, l.EngineRPM, from, from+step), Blower: -1, Logged: true}
		if len(l.SpeedKmh) == n {
			stop.SpeedKmh = mean(l.TimeS, l.SpeedKmh, from, from+step)
		}
		start.Stops = append(start.Stops, stop)
	}
	p.Setting.Starts, p.Setting.Ahead = []ensemble.Start{start}, ensemble.Stop{Seconds: 1, Logged: true}
	return p.Healthy(), true
}

// mean is a column's mean between two times; gaps, and nothing at all, are 0.
func mean(t, v []float64, from, to float64) float64 {
	sum, n := 0.0, 0
	for i, s := range t {
		if s >= from && s < to && !math.IsNaN(v[i]) {
			sum, n = sum+v[i], n+1
		}
	}
	return sum / float64(max(n, 1))
}

// BandOf is the band of a log's crowd, in the log's own seconds.
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
