package warmup

import (
	"math"
	"slices"

	"loopbook/cases"
)

// handLog is the name of the log that is written down here.
const handLog = "written down"

// handOf is the case's log of that stage that is written down, a new one if there
// is none.
func handOf(k *cases.Case, stage cases.Stage) *cases.Log {
	for i := range k.Logs {
		if l := &k.Logs[i]; l.Name == handLog && stage.Holds(l.Stage) {
			return l
		}
	}
	k.Logs = append(k.Logs, cases.Log{Name: handLog, Stage: stage})
	return &k.Logs[len(k.Logs)-1]
}

// handLogs is how many of a case's logs were written down here.
func handLogs(k *cases.Case) (n int) {
	for _, l := range k.Logs {
		if l.Name == handLog {
			n++
		}
	}
	return n
}

// into keeps the log in the order of time; a second row for a moment replaces the
// first.
func (r row) into(l *cases.Log) {
	s, had := r.minutes*60, len(l.TimeS)
	at := had
	for at > 0 && l.TimeS[at-1] >= s {
		at--
	}
	if again := at < had && math.Abs(l.TimeS[at]-s) < 1; !again {
		l.TimeS = slices.Insert(l.TimeS, at, s)
		for _, column := range []*[]float64{&l.EctC, &l.EngineRPM, &l.SpeedKmh} {
			if len(*column) == had && had > 0 {
				*column = slices.Insert(*column, at, math.NaN())
			}
		}
	}
	c := float64(r.c)
	set(&l.EctC, len(l.TimeS), at, &c)
	set(&l.EngineRPM, len(l.TimeS), at, r.rpm)
	set(&l.SpeedKmh, len(l.TimeS), at, r.kmh)
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
