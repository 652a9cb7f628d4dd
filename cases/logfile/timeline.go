package logfile

import (
	"math"

	"loopbook/diagram/say"
)

const (
	sameS      = 1e-6 // times nearer than this are one
	leapS      = 6 * hourS
	backS      = 10 // seconds back, for rows on end: the clock was set or the recording began anew
	backRows   = 5
	longStepS  = 60
	wrapsAfter = 0.9 // of the clock's period
)

// record is a row that is read: its time and what stands at it. NaN is a gap.
type record struct {
	line   int
	t      float64
	values [5]float64 // of the keys behind time
}

// timeline makes times that never go back. It holds one row until the next
// one shows whether its time was a slip.
type timeline struct {
	emit    func(record)
	periodS float64

	held, kept        record
	isHeld, isKept    bool
	offset, step      float64
	raw               float64 // time of the row before, as it stands
	run               int     // rows on end that lie behind
	runAt             float64
	back, same, turns tally
	leap, anew        tally
}

func (l *timeline) add(r record) {
	l.turn(r.t, r.line)
	r.t += l.offset
	switch {
	case !l.isHeld:
	case r.t > l.held.t+leapS:
		l.leap.add(r.line, nil)
		l.shift(&r)
	case r.t > l.held.t+sameS:
	case r.t >= l.held.t-sameS:
		l.same.add(r.line, nil)
		r.t = l.held.t
	case !l.isKept || r.t > l.kept.t+sameS: // the row before was the slip
		l.back.add(l.held.line, nil)
		l.held = r
		return
	default:
		if !l.anewAt(r.t) {
			l.back.add(r.line, nil)
			return
		}
		l.anew.add(r.line, nil)
		l.shift(&r)
	}
	l.run = 0
	l.pass()
	l.held, l.isHeld = r, true
}

// turn tells that a clock begins again, as at midnight.
func (l *timeline) turn(t float64, line int) {
	turned := wrapsAfter * l.periodS
	switch {
	case l.periodS == 0 || !l.isHeld:
	case t < l.raw-turned:
		l.offset += l.periodS
		l.turns.add(line, nil)
	case t > l.raw+turned && l.turns.n > 0: // a late row from before the turn
		l.offset -= l.periodS
		l.turns.n--
	}
	l.raw = t
}

// shift moves the clock so that r follows the held row by the usual step.
func (l *timeline) shift(r *record) {
	to := l.held.t + l.usualStep()
	l.offset += to - r.t
	r.t = to
}

func (l *timeline) usualStep() float64 {
	if l.step > 0 {
		return l.step
	}
	return 1
}

// anewAt reports whether enough rows on end lie far behind and go forward.
func (l *timeline) anewAt(t float64) bool {
	if l.run > 0 && t >= l.runAt {
		l.run++
	} else {
		l.run = 1
	}
	l.runAt = t
	return l.run >= backRows && l.held.t-t > backS
}

// pass hands the held row on.
func (l *timeline) pass() {
	if !l.isHeld {
		return
	}
	if step := l.held.t - l.kept.t; l.isKept && step > 0 {
		l.step = min(step, longStepS)
	}
	l.kept, l.isKept = l.held, true
	l.emit(l.held)
}

func (l *timeline) remark(to []say.Text) []say.Text {
	to = l.back.remark(to, "log.back")
	to = l.same.remark(to, "log.same")
	to = l.turns.remark(to, "log.turns")
	to = l.leap.remark(to, "log.leap", leapS/hourS)
	return l.anew.remark(to, "log.anew", backRows, backRows-1)
}

func noValues() [5]float64 {
	n := math.NaN()
	return [5]float64{n, n, n, n, n}
}
