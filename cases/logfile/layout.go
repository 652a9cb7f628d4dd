package logfile

import (
	"errors"
	"fmt"
	"slices"

	"loopbook/diagram/say"
)

const (
	searchedLines = 400  // that tell the layout
	maxColumns    = 2000 // more is no log
)

// layout is how a file is written.
type layout struct {
	words      vocabulary
	end, delim byte
	decimal    decimal
	monthFirst bool
	header     []string
	headerLine int // 0 without a heading
	units      []unit
	firstData  int  // line
	whole      bool // the beginning is the whole file
	remarks    []say.Text
}

// row is a line of the file's beginning.
type row struct {
	line  int
	cells []string
}

// findLayout finds delimiter, heading, units and decimal mark.
func findLayout(head []byte) (*layout, error) {
	l := &layout{words: newVocabulary(), end: lineEnd(head), whole: len(head) < headBytes}
	var rows []row
	best := 0.0
	width := 0
	for _, delim := range []byte{';', '\t', '|', ','} {
		tried, err := firstRows(head, l.end, delim, searchedLines)
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
	return l, l.twofold(rows)
}

// twofold is an error if commas part decimals as well as columns, which nothing tells apart: there are more values
// than headings, and no decimal point in any.
func (l *layout) twofold(rows []row) error {
	if l.delim != ',' || l.headerLine == 0 {
		return nil
	}
	headings, data, more, longest := 0, 0, 0, row{}
	for _, r := range rows {
		if r.line == l.headerLine {
			headings = r.filled()
		}
		if r.line < l.firstData {
			continue
		}
		if slices.ContainsFunc(r.cells, func(c string) bool { return marked(c, '.') == 1 }) { // a date's are none
			return nil
		}
		data++
		if r.filled() > headings {
			more++
		}
		if r.filled() > longest.filled() {
			longest = r
		}
	}
	if 2*more <= data {
		return nil
	}
	return fmt.Errorf("line %d: %d values under %d headings, and no decimal point anywhere: commas seem to part decimals as well as columns. Save the log with semicolons between its columns, or with decimal points",
		longest.line, longest.filled(), headings)
}

// filled is how many cells there are up to the last that isn't blank.
func (r row) filled() int {
	n := len(r.cells)
	for n > 0 && r.cells[n-1] == "" {
		n--
	}
	return n
}

func firstRows(head []byte, end, delim byte, most int) ([]row, error) {
	t := &table{lines: linesOf(head, end), delim: delim}
	var rows []row
	for len(rows) < most {
		cells, err := t.next()
		if errors.Is(err, errLongLine) {
			return nil, err
		} else if err != nil {
			break
		}
		if len(cells) > maxColumns {
			return nil, fmt.Errorf("line %d: has %d columns, at most %d are read", t.at, len(cells), maxColumns)
		}
		if filled(cells) {
			rows = append(rows, row{t.at, textsOf(cells)})
		}
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
	if isNumber(cell) {
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
