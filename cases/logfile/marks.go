package logfile

import (
	"strings"
)

// decide finds the decimal mark and the order of day and month.
func (l *layout) decide(rows []row) {
	var points, commas, thousands, twelveHours, dayFirst, monthFirst int
	for _, r := range rows {
		for _, c := range r.cells {
			points += marked(c, '.')
			commas += marked(c, ',')
			thousands += groupedBy(c, ',')
			if strings.HasSuffix(strings.ToLower(strings.ReplaceAll(c, ".", "")), "m") && strings.Contains(c, ":") {
				twelveHours++
			}
			dayFirst += onlyAs(c, false)
			monthFirst += onlyAs(c, true)
		}
	}
	l.decimal = decimal{'.'}
	if commas > 0 && (points == 0 || commas > thousands) && commas >= points {
		l.decimal = decimal{','}
	}
	l.monthFirst = monthFirst > dayFirst || monthFirst == dayFirst && twelveHours > 0
}

// marked is 1 if the last of the marks in a number is the one given.
func marked(cell string, mark byte) int {
	_, rest, ok := decimal{mark}.number([]byte(cell))
	i := strings.LastIndexAny(cell, ".,")
	if !ok || strings.ContainsAny(string(rest), ".,:/") || i < 0 || cell[i] != mark {
		return 0
	}
	return 1
}

// groupedBy is 1 if the mark may part thousands: three digits follow it.
func groupedBy(cell string, mark byte) int {
	i := strings.LastIndexByte(cell, mark)
	if i < 0 || marked(cell, mark) == 0 || !grouped([]byte(cell[i+1:])) {
		return 0
	}
	return 1
}

// onlyAs is 1 if a date can only be read in the one order of day and month.
func onlyAs(cell string, monthFirst bool) int {
	if !strings.Contains(cell, "/") {
		return 0
	}
	_, so := readStamp([]byte(cell), monthFirst)
	_, otherwise := readStamp([]byte(cell), !monthFirst)
	if so && !otherwise {
		return 1
	}
	return 0
}
