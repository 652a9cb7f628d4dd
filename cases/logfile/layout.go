package logfile

import (
	"errors"
	"fmt"
	"strings"
)

const (
	searchedLines = 400  // that tell the layout
	maxColumns    = 2000 // more is no log
)

// layout is how a file is written.
type layout struct {
	end, delim byte
	decimal    decimal
	monthFirst bool
	header     []string
	headerLine int // 0 without a heading
	units      []unit
	firstData  int // line
	remarks    []string
}

// row is a line of the file's beginning.
type row struct {
	line  int
	cells []string
}

// findLayout finds delimiter, heading, units and decimal mark.
func findLayout(head []byte) (*layout, error) {
	l := &layout{end: lineEnd(head)}
	var rows []row
	best := 0.0
	width := 0
	for _, delim := range []byte{';', '\t', '|', ','} {
		tried, err := firstRows(head, l.end, delim)
		if err != nil {
			return nil, err
		}
		if score, n := regularity(tried); score > best {
			best, width, rows, l.delim = score, n, tried, delim
		}
	}
	if best == 0 {
		return nil, errors.New("line 1: no table: no line here has two numbers or times parted by comma, semicolon, tab or pipe")
	}
	l.place(rows, width)
	return l, nil
}

func firstRows(head []byte, end, delim byte) ([]row, error) {
	t := &table{lines: linesOf(head, end), delim: delim}
	var rows []row
	for len(rows) < searchedLines {
		cells, err := t.next()
		if errors.Is(err, errLongLine) {
			return nil, err
		} else if err != nil {
			break
		}
		if len(cells) > maxColumns {
			return nil, fmt.Errorf("line %d: has %d columns, at most %d are read", t.at, len(cells), maxColumns)
		}
		r := row{line: t.at, cells: make([]string, len(cells))}
		for i, c := range cells {
			r.cells[i] = string(trim(c))
		}
		rows = append(rows, r)
	}
	return rows, nil
}

// regularity scores a delimiter: how many cells of rows of one width can be
// read as numbers or times, and how few can't. The width is that of most such
// cells.
func regularity(rows []row) (score float64, width int) {
	type count struct{ readable, cells int }
	counts := map[int]count{}
	for _, r := range rows {
		readable, text := r.readable()
		c := counts[len(r.cells)]
		c.readable += readable
		c.cells += readable + text
		counts[len(r.cells)] = c
	}
	most := 0
	for w, c := range counts {
		if w < 2 || c.readable == 0 {
			continue
		}
		share := float64(c.readable) / float64(c.cells)
		score = max(score, float64(c.readable)*share*share)
		if c.readable > most || c.readable == most && w > width {
			most, width = c.readable, w
		}
	}
	return score, width
}

// readable counts the cells that hold a number or a time, and those with
// another text. Blank ones count as neither.
func (r row) readable() (readable, text int) {
	for _, c := range r.cells {
		switch {
		case missing([]byte(c)):
		case isValue(c):
			readable++
		default:
			text++
		}
	}
	return readable, text
}

// isValue takes either decimal mark and either order of day and month.
func isValue(cell string) bool {
	_, rest, ok := decimal{'.'}.number([]byte(cell))
	if ok && len(rest) == 0 {
		return true
	}
	if _, isUnit := unitOf(string(rest)); ok && isUnit {
		return true
	}
	_, dayFirst := readStamp([]byte(cell), false)
	_, monthFirst := readStamp([]byte(cell), true)
	return dayFirst || monthFirst
}

// isData reports whether a row is one of values.
func (r row) isData(width int) bool {
	readable, text := r.readable()
	return len(r.cells) >= max(2, width/2) && readable > 0 && 2*readable >= text
}

// place finds where the data begin, and heading and units above them.
func (l *layout) place(rows []row, width int) {
	first := firstData(rows, width)
	above := rows[:first]
	if n := len(above); n > 0 && above[n-1].isUnits() {
		for _, c := range above[n-1].cells {
			u, _ := unitOf(c)
			l.units = append(l.units, u)
		}
		above = above[:n-1]
	}
	if n := len(above); n > 0 && len(above[n-1].cells) >= max(2, width/2) {
		l.headerLine = above[n-1].line
		l.header = append(l.header, above[n-1].cells...)
		l.header[0] = strings.TrimLeft(l.header[0], "#/ ")
	} else {
		l.remarks = append(l.remarks, "the file has no heading: its columns are told by their values")
	}
	for len(l.header) < width {
		l.header = append(l.header, "")
	}
	for i, h := range l.header {
		if h == "" {
			l.header[i] = fmt.Sprintf("column %d", i+1)
		}
	}
	l.firstData = rows[first].line
	l.decide(rows[first:])
}

// firstData is the index of the first of three rows of values on end, or of
// those that end the file.
func firstData(rows []row, width int) int {
	for i := range rows {
		run := 0
		for j := i; j < len(rows) && j < i+3 && rows[j].isData(width); j++ {
			run++
		}
		if run == 3 || run > 0 && i+run == len(rows) {
			return i
		}
	}
	return 0
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
