package warmup

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
)

// row is a line of what is written down; nil: not known.
type row struct {
	minutes  float64
	c        diagram.Celsius // NaN: a gap in somebody else's file
	rpm, kmh *float64
}

// handAt is where the log of that stage that is written down stands in a case; -1: there is none.
func handAt(k *cases.Case, stage cases.Stage) int {
	return slices.IndexFunc(k.Logs, func(l cases.Log) bool { return l.Name == cases.HandLog && stage.Holds(l.Stage) })
}

// handOf is the case's log of that stage that is written down, a new one if there
// is none.
func handOf(k *cases.Case, stage cases.Stage) *cases.Log {
	at := handAt(k, stage)
	if at < 0 {
		at = len(k.Logs)
		k.Logs = append(k.Logs, cases.Log{Name: cases.HandLog, Stage: stage})
	}
	return &k.Logs[at]
}

// rowsOf reads what is written down of a stage, in the order of time.
func rowsOf(k *cases.Case, stage cases.Stage) []row {
	at := handAt(k, stage)
	if at < 0 {
		return nil
	}
	l := &k.Logs[at]
	rows := make([]row, len(l.TimeS))
	for i, s := range l.TimeS {
		rows[i] = row{minutes: s / 60, c: diagram.Celsius(math.NaN()), rpm: known(l.EngineRPM, i), kmh: known(l.SpeedKmh, i)}
		if c := known(l.EctC, i); c != nil {
			rows[i].c = diagram.Celsius(*c)
		}
	}
	return rows
}

// known is a column's value; nil where there is none.
func known(column []float64, i int) *float64 {
	if i >= len(column) || !isKnown(column[i]) {
		return nil
	}
	v := column[i]
	return &v
}

func isKnown(v float64) bool { return !math.IsNaN(v) }

// at reports whether the row is of that second.
func (r row) at(s float64) bool { return math.Abs(r.minutes*60-s) < 1 }

// into keeps the log in the order of time.
func (r row) into(l *cases.Log) {
	s, had := r.minutes*60, len(l.TimeS)
	at := had
	for at > 0 && l.TimeS[at-1] >= s {
		at--
	}
	for _, column := range columns(l) {
		if len(*column) == had && had > 0 {
			*column = slices.Insert(*column, at, math.NaN())
		}
	}
	l.TimeS = slices.Insert(l.TimeS, at, s)
	c := float64(r.c)
	set(&l.EctC, len(l.TimeS), at, &c)
	set(&l.EngineRPM, len(l.TimeS), at, r.rpm)
	set(&l.SpeedKmh, len(l.TimeS), at, r.kmh)
}

// instead puts the row in another's place, with nothing of what that knew.
func (r row) instead(was row, l *cases.Log) {
	was.outOf(l)
	r.into(l)
}

// outOf takes the row for that moment out of the log.
func (r row) outOf(l *cases.Log) {
	at := slices.IndexFunc(l.TimeS, r.at)
	if at < 0 {
		return
	}
	l.TimeS = slices.Delete(l.TimeS, at, at+1)
	for _, column := range columns(l) {
		if at < len(*column) {
			*column = slices.Delete(*column, at, at+1)
		}
		if gaps := !slices.ContainsFunc(*column, isKnown); gaps && column != &l.EctC {
			*column = nil // nothing is known of it any more
		}
	}
}

// remove takes a row out of the case, and with its last row the log: one without any has no curve.
func remove(k *cases.Case, stage cases.Stage, r row) {
	at := handAt(k, stage)
	if at < 0 {
		return
	}
	r.outOf(&k.Logs[at])
	if len(k.Logs[at].TimeS) == 0 {
		k.Logs = slices.Delete(k.Logs, at, at+1)
	}
}

// columns are what a log may know at each of its times.
func columns(l *cases.Log) []*[]float64 {
	return []*[]float64{&l.EctC, &l.EngineRPM, &l.SpeedKmh, &l.IntakeC, &l.LoadPercent}
}

// set writes a column's value. One of which nothing was known begins with gaps, and
// what isn't known leaves what was.
func set(column *[]float64, length, at int, v *float64) {
	if v == nil {
		return
	}
	for len(*column) < length {
		*column = append(*column, math.NaN())
	}
	(*column)[at] = *v
}
