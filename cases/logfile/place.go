package logfile

import (
	"fmt"
	"slices"
	"strings"

	"loopbook/diagram/say"
)

// place finds where the data begin, and heading and units above them.
func (l *layout) place(rows []row, width int) {
	first := l.firstOf(rows, width)
	heading, units := above(rows[:first], width)
	for _, c := range units.cells {
		u, _ := unitOf(c)
		l.units = append(l.units, u)
	}
	l.headerLine = heading.line
	l.header = headed(heading.cells, width)
	if heading.line == 0 {
		l.remarks = append(l.remarks, say.Of("log.no-heading"))
	}
	l.firstData = rows[first].line
	l.decide(rows[first:])
}

// headed are the texts of a heading's cells, and of columns without one, no fewer than the width.
func headed(cells []string, width int) []string {
	out := make([]string, max(len(cells), width))
	copy(out, cells)
	out[0] = strings.TrimLeft(out[0], "#/ ")
	for i, h := range out {
		if h == "" {
			out[i] = fmt.Sprintf("column %d", i+1)
		}
	}
	return out
}

// above are the heading and the row of units that end what stands above the
// data; either may be missing.
func above(rows []row, width int) (heading, units row) {
	if n := len(rows); n > 0 && rows[n-1].isUnits() {
		units = rows[n-1]
		rows = rows[:n-1]
	}
	if n := len(rows); n > 0 && len(rows[n-1].cells) >= max(2, width/2) {
		heading = rows[n-1]
	}
	return heading, units
}

// firstOf is where rows of values begin: below a heading that names the time
// or the coolant, since a preamble can look like data; else at the first three
// on end, or at those that end the file.
func (l *layout) firstOf(rows []row, width int) int {
	first := -1
	for i := range rows {
		if i > 0 && rows[i-1].isData(width) {
			continue
		}
		run := 0
		for j := i; j < len(rows) && j < i+3 && rows[j].isData(width); j++ {
			run++
		}
		if run < 3 && (run == 0 || i+run < len(rows)) {
			continue
		}
		if heading, _ := above(rows[:i], width); heading.isNamed(l.words) {
			return i
		}
		if first < 0 {
			first = i
		}
	}
	return max(0, first)
}

// isNamed reports whether a row has a name for the time or the coolant.
func (r row) isNamed(v vocabulary) bool {
	return slices.ContainsFunc(r.cells, func(c string) bool {
		key := v.keyOf(c)
		return key == Time || key == Ect
	})
}

// isUnits reports whether most cells hold a unit.
func (r row) isUnits() bool {
	units, others := 0, 0
	for _, c := range r.cells {
		if _, ok := unitOf(c); ok {
			units++
		} else if !missing([]byte(c)) {
			others++
		}
	}
	return units >= 2 && units > 2*others
}
