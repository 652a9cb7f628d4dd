package logfile

import (
	"bytes"
	"fmt"
	"math"
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
	if !ok || len(rest) > 0 && !bytes.Equal(rest, s.suffix) {
		if missing(cell) {
			s.gaps.add(line, cell)
		} else {
			s.text.add(line, cell)
		}
		return math.NaN()
	}
	v = v*s.unit.factor + s.unit.offset
	if !(v >= s.low && v <= s.high) {
		s.wild.add(line, cell)
		return math.NaN()
	}
	return v
}

func (s *series) remark(to []string) []string {
	column := fmt.Sprintf("column %q: ", s.Header)
	if s.gaps.n > 0 {
		to = append(to, fmt.Sprintf("%s%s without a value", column, many(s.gaps.n, "cell")))
	}
	if s.text.n > 0 {
		to = append(to, fmt.Sprintf("%s%s with text, the first in line %d (%q): left as gaps", column, many(s.text.n, "cell"), s.text.line, s.text.cell))
	}
	if s.wild.n > 0 {
		to = append(to, fmt.Sprintf("%s%s out of any range, the first in line %d (%q): left as gaps", column, many(s.wild.n, "cell"), s.wild.line, s.wild.cell))
	}
	return to
}
