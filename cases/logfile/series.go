package logfile

import (
	"bytes"
	"math"
	"strconv"

	"loopbook/diagram/say"
)

// series reads the cells of one column.
type series struct {
	pick
	at        int // its place in a record
	unit      unit
	low, high float64 // what is kept, in the log's unit
	suffix    []byte  // the unit that may stand behind a number
	decimal   decimal
	gaps      tally
	text      tally
	wild      tally // out of bounds
}

// value is a cell in the log's unit, or NaN; what is dropped is counted.
func (s *series) value(cell []byte, line int) float64 {
	v, rest, ok := s.decimal.number(cell)
	u := s.unit
	if ok && len(rest) > 0 && !bytes.Equal(rest, s.suffix) { // the tool was set to other units on the way
		u, _ = unitOf(string(rest))
		ok = u.of == dimensionOf(s.Key)
	}
	if !ok {
		if missing(cell) {
			s.gaps.add(line, cell)
		} else {
			s.text.add(line, cell)
		}
		return math.NaN()
	}
	v = v*u.factor + u.offset
	if !(v >= s.low && v <= s.high) {
		s.wild.add(line, cell)
		return math.NaN()
	}
	return v
}

func (s *series) remark(to []say.Text) []say.Text {
	column := strconv.Quote(s.Header)
	if t := s.gaps; t.n > 0 {
		to = append(to, say.Of("log.gaps", column, t.n))
	}
	if t := s.text; t.n > 0 {
		to = append(to, say.Of("log.text", column, t.n, t.line, strconv.Quote(t.cell)))
	}
	if t := s.wild; t.n > 0 {
		to = append(to, say.Of("log.wild", column, t.n, t.line, strconv.Quote(t.cell)))
	}
	return to
}
