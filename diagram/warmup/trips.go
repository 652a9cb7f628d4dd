package warmup

import (
	"math"
	"slices"

	"loopbook/diagram"
	"loopbook/diagram/say"
)

// What separates one trip from the next, and what an engine is that turns
// (judgement: no engine idles under 400 rpm or is cranked faster; a halt of
// five minutes is longer than traffic's).
const (
	turnsRPM = 400
	restS    = 300
	slipS    = 60  // a clock that goes back further begins a new record
	fillS    = 120 // a logger fills its first rows by then
)

// sample is a row of the record; NaN is not known.
type sample struct{ s, ect, rpm, kmh, intake float64 }

// stands reports whether the engine is known to stand.
func (a sample) stands() bool { return a.rpm < turnsRPM }

// trip is the rows from a start to a rest. start is the row at which the
// engine starts.
type trip struct {
	rows  []sample
	start int
}

// split reads the record's trips, those that hold a temperature.
func split(s Series) []trip {
	p := splitter{rows: make([]sample, 0, len(s.TimeS)), stoodFrom: math.NaN()}
	for i := range s.TimeS {
		if a := s.row(i); !math.IsNaN(a.s) {
			p.add(a)
		}
	}
	p.end()
	return p.trips
}

// splitter gathers a trip's rows until a rest or a new record.
type splitter struct {
	trips     []trip
	rows      []sample
	stoodFrom float64 // NaN: it turns, or that isn't known
}

func (p *splitter) add(a sample) {
	if n := len(p.rows); n > 0 {
		last := p.rows[n-1]
		switch step := a.s - last.s; {
		case step < -slipS || step > restS && cooled(last, a):
			p.end()
		case step <= 0:
			return
		}
	}
	switch {
	case !a.stands():
		if a.s-p.stoodFrom >= restS {
			p.endAtRest()
		}
		p.stoodFrom = math.NaN()
	case math.IsNaN(p.stoodFrom):
		p.stoodFrom = a.s
	}
	p.rows = append(p.rows, a)
}

// cooled reports whether a long gap hides a halt. A record of a row in ten
// minutes has none.
func cooled(a, b sample) bool { return !(b.ect > a.ect-5) }

func (p *splitter) end() {
	if t, ok := newTrip(p.rows); ok {
		p.trips = append(p.trips, t)
	}
	p.rows, p.stoodFrom = nil, math.NaN()
}

// endAtRest closes the trip before a rest; the rest's last minute begins the
// next one.
func (p *splitter) endAtRest() {
	keep := len(p.rows)
	for from := max(p.rows[keep-1].s-60, p.stoodFrom); keep > 0 && p.rows[keep-1].s >= from; {
		keep--
	}
	kept := slices.Clone(p.rows[keep:])
	p.rows = p.rows[:keep]
	p.end()
	p.rows = kept
}

func (s Series) row(i int) sample {
	at := func(column []float64) float64 {
		if i >= len(column) {
			return math.NaN()
		}
		return column[i]
	}
	a := sample{s.TimeS[i], at(s.EctC), at(s.RPM), at(s.SpeedKmh), at(s.IntakeC)}
	if math.IsInf(a.s, 0) {
		a.s = math.NaN()
	}
	if !diagram.Celsius(a.ect).Plausible() {
		a.ect = math.NaN()
	}
	return a
}

// newTrip finds the engine's start among rows. A trip has the engine not known
// to stand, and a temperature.
func newTrip(rows []sample) (trip, bool) {
	wake(rows)
	start, speeds := 0, anyRPM(rows)
	for start < len(rows) && (rows[start].stands() || speeds && math.IsNaN(rows[start].rpm)) {
		start++
	}
	if start == len(rows) {
		return trip{}, false
	}
	if !slices.ContainsFunc(rows[:start], sample.stands) && (rows[start].s-rows[0].s < fillS || warmed(rows[:start])) {
		start = 0
	}
	t := trip{rows, start}
	return t, t.startC() != nil
}

// warmedK is by how much nothing warms but a running engine (judgement).
const warmedK = 5

// warmed reports whether the engine ran although nothing says how fast: whoever writes by hand may note
// the speed in the later rows only.
func warmed(rows []sample) bool {
	first := math.NaN()
	for _, a := range rows {
		if math.IsNaN(first) {
			first = a.ect
		}
		if a.ect-first > warmedK {
			return true
		}
	}
	return false
}

// wake drops the least value from rows before the sensor first answers; where
// it never does, it stays.
func wake(rows []sample) {
	first := 0
	for first < len(rows) && !(rows[first].ect > openSensorC) {
		first++
	}
	if first == len(rows) {
		return
	}
	for i := range rows[:first] {
		rows[i].ect = math.NaN()
	}
}

func anyRPM(rows []sample) bool {
	return slices.ContainsFunc(rows, func(a sample) bool { return !math.IsNaN(a.rpm) })
}

// startC is the engine's temperature in the first ten seconds, or the first
// that is there.
func (t trip) startC() *diagram.Celsius {
	c := t.early(func(a sample) float64 { return a.ect })
	if math.IsNaN(c) {
		return nil
	}
	return pointer(diagram.Celsius(c))
}

// early is the median of a column in the ten seconds from the start or, where
// they hold none, its first value; NaN without any.
func (t trip) early(column func(sample) float64) float64 {
	var values []float64
	for _, a := range t.rows[t.start:] {
		v := column(a)
		if a.s-t.rows[t.start].s > 10 && len(values) > 0 {
			break
		}
		if !math.IsNaN(v) {
			values = append(values, v)
		}
	}
	return median(values)
}

// choose takes the first trip that starts cold, or the longest.
func choose(trips []trip, o Options) trip {
	best := trips[0]
	for _, t := range trips {
		if t.cold(o) {
			return t
		}
		if t.lastS()-t.startS() > best.lastS()-best.startS() {
			best = t
		}
	}
	return best
}

func (t trip) startS() float64 { return t.rows[t.start].s }
func (t trip) lastS() float64  { return t.rows[len(t.rows)-1].s }

func (r *Result) remarkTrips(t trip, all []trip) {
	if len(all) > 1 {
		r.remark(say.Of("remark.trips", len(all), t.startS()))
	}
}
