package logfile

import (
	"math"
	"slices"
)

// clock turns the cells of the time column into seconds.
type clock struct {
	form       form
	factor     float64
	periodS    float64 // after which the clock begins again; 0 if it doesn't
	decimal    decimal
	monthFirst bool
}

// longestS is how long a warm-up's log may last before a finer reading of its
// times is the likelier one (judgement).
const longestS = 6 * hourS

// farthestS bounds times; epoch times lie well within.
const farthestS = 1e11

// clockOf finds how a column tells the time. The unit is that of its heading;
// assumed says that the values had to tell it.
func clockOf(l *layout, s *sample, stated unit) (c clock, u unit, assumed bool) {
	c = clock{form: counted, factor: 1, decimal: l.decimal, monthFirst: l.monthFirst}
	all := s.present()
	span := spanOf(all)
	if s.stamps > s.numbers {
		return c.stamped(s.form, all[0], span, stated.name)
	}
	u, assumed = countedIn(all, span, stated)
	c.factor = u.factor
	return c, u, assumed
}

// stamped takes a:b for hours and minutes if it begins past the first hour, as
// the time of day does, and even so makes no long log.
func (c clock) stamped(f form, first, span float64, stated string) (clock, unit, bool) {
	c.form = f
	switch f {
	case short:
		assumed := stated != "hh:mm" && stated != "mm:ss"
		if stated == "hh:mm" || assumed && first >= 60 && span <= longestS/60 {
			c.factor, c.periodS = 60, dayS
			return c, unit{name: "hh:mm", of: duration, factor: 60}, assumed
		}
		c.periodS = hourS
		return c, unit{name: "mm:ss", of: duration, factor: 1}, assumed
	case shortS:
		c.periodS = hourS
		return c, unit{name: "mm:ss", of: duration, factor: 1}, false
	case clocked:
		c.periodS = dayS
		return c, unit{name: "hh:mm:ss", of: duration, factor: 1}, false
	}
	return c, unit{name: "date and time", of: duration, factor: 1}, false
}

// countedIn tells epoch times by their size, then trusts the heading, then
// takes seconds unless the log would last too long.
func countedIn(all []float64, span float64, stated unit) (u unit, assumed bool) {
	typical := medianOf(all)
	for _, e := range []struct {
		name   string
		factor float64
	}{{"s", 1}, {"ms", 1e-3}, {"µs", 1e-6}, {"ns", 1e-9}} {
		if s := typical * e.factor; s > 0.9e9 && s < 5e9 && (e.factor < 1 || stated.name == "" || stated.name == "s") {
			return unit{e.name + " since 1970", duration, e.factor, 0}, false
		}
	}
	switch {
	case stated.of == duration && stated.factor > 0:
		return stated, false
	case typical > 3e4 && typical < 8e4 && span < 1: // a spreadsheet's days since 1900
		return unit{"days", duration, dayS, 0}, true
	case span > longestS:
		u, _ = unitOf("ms")
		return u, true
	}
	return assumedUnit(Time), true
}

// seconds is what a cell tells; ok is false if it tells no time.
func (c *clock) seconds(cell []byte) (t float64, ok bool) {
	if c.form == counted {
		v, rest, ok := c.decimal.number(cell)
		factor := c.factor
		if len(rest) > 0 {
			u, _ := unitOf(string(rest))
			factor, ok = u.factor, ok && u.of == duration
		}
		t = v * factor
		return t, ok && math.Abs(t) < farthestS
	}
	s, ok := readStamp(cell, c.monthFirst)
	if !ok || (s.form == dated) != (c.form == dated) {
		return 0, false
	}
	t = s.total()
	if s.form == short {
		t *= c.factor
	}
	return t, math.Abs(t) < farthestS
}

// spanOf is the range of the middle nine tenths, so that slips don't count.
func spanOf(all []float64) float64 {
	if len(all) == 0 {
		return 0
	}
	sorted := slices.Clone(all)
	slices.Sort(sorted)
	at := func(share float64) float64 { return sorted[int(share*float64(len(sorted)-1))] }
	return (at(0.95) - at(0.05)) / 0.9
}

func medianOf(all []float64) float64 {
	if len(all) == 0 {
		return math.NaN()
	}
	sorted := slices.Clone(all)
	slices.Sort(sorted)
	return sorted[len(sorted)/2]
}
