package exchange

import (
	"encoding/csv"
	"io"
	"strings"
	"time"

	"loopbook/cases"
)

// Table writes lines of the notebook as CSV (RFC 4180) for a spreadsheet.
type Table struct{ w *csv.Writer }

// NewTable writes the heading; heads name the seven columns: id, opened, title,
// vehicle, layout, cause, changed.
func NewTable(w io.Writer, heads [7]string) (*Table, error) {
	t := &Table{csv.NewWriter(w)}
	return t, t.write(heads[:])
}

// Add writes lines.
func (t *Table) Add(lines []cases.Summary) error {
	rows := make([][]string, len(lines))
	for i, s := range lines {
		rows[i] = []string{s.ID, date(s.Opened), s.Title, s.Vehicle, s.Layout, string(s.Cause), date(s.Changed)}
	}
	return t.write(rows...)
}

func (t *Table) write(rows ...[]string) error {
	for _, cells := range rows {
		for i, c := range cells {
			cells[i] = Cell(c)
		}
	}
	return t.w.WriteAll(rows)
}

func date(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// Cell is the text as a cell that no spreadsheet takes for a formula: one that
// begins as a formula does (OWASP, CSV injection: = + - @ tab carriage return; ASVS
// 1.2.10 adds the null sign) gets a quotation mark before it. A number below zero computes
// nothing, and behind a mark it would be left out of a sum.
func Cell(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\x00\n", rune(text[0])) && !belowZero(text) {
		return "'" + text
	}
	return text
}

func belowZero(text string) bool {
	digits, is := strings.CutPrefix(text, "-")
	return is && digits != "" && strings.Trim(digits, "0123456789.") == "" && strings.Count(digits, ".") <= 1
}
