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
	switch {
	case points == 0 && partsThousands(rows, ','):
	case commas == 0 && partsThousands(rows, '.'),
		commas > 0 && (points == 0 || commas > thousands) && commas >= points:
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

// partsThousands reports whether a mark parts thousands though there is no decimal to tell so: in one column it
// stands before three digits and nowhere else, beside whole numbers of three digits and none of more. A log of
// thousandths has the mark in each number, or before fewer digits too.
func partsThousands(rows []row, mark byte) bool {
	parted, three, more := map[int]bool{}, map[int]bool{}, map[int]bool{}
	for _, r := range rows {
		for i, c := range r.cells {
			unsigned := strings.TrimLeft(c, "+-")
			digits := len(unsigned) - len(strings.TrimLeft(unsigned, "0123456789"))
			switch {
			case marked(c, mark) == 1:
				if groupedBy(c, mark) == 0 || unsigned[0] == '0' {
					return false
				}
				parted[i] = true
			case digits == 3:
				three[i] = true
			case digits > 3:
				more[i] = true
			}
		}
	}
	for i := range parted {
		if three[i] && !more[i] {
			return true
		}
	}
	return false
}

// onlyAs is 1 if a date can only be read in the one order of day and month.
func onlyAs(cell string, monthFirst bool) int {
	if !strings.ContainsAny(cell, "/-") {
		return 0
	}
	_, so := readStamp([]byte(cell), monthFirst)
	_, otherwise := readStamp([]byte(cell), !monthFirst)
	if so && !otherwise {
		return 1
	}
	return 0
}
