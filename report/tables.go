package report

import "loopbook/diagram/drawing"

var titlesStyle = style{7.5, true, drawing.Text}

const (
	cellGap = 6   // between columns
	rowGap  = 1.1 // over and under a row
	oneRow  = 12  // lines: a row of no more isn't torn apart
)

// column is a table's column: its title and its share of the width.
type column struct {
	title string
	share float64
}

// cell is a text in a table.
type cell struct {
	text   string
	strong bool
}

// cells are plain cells.
func cells(texts ...string) []cell {
	row := make([]cell, len(texts))
	for i, t := range texts {
		row[i].text = t
	}
	return row
}

// table writes rows under their titles, which come again on each page. A row
// that is higher than what is left goes over to the next page, a long one in
// pieces.
func (p *paper) table(columns []column, rows [][]cell) { p.tableWith(columns, rows, 0) }

// tableWith is a table whose last row goes to the page that has room for what
// stands under it, too.
func (p *paper) tableWith(columns []column, rows [][]cell, under float64) {
	if len(rows) == 0 {
		return
	}
	t := grid{p: p, widths: widths(columns, p.inner())}
	for i, c := range columns {
		t.head = append(t.head, p.lines(c.title, t.widths[i]-cellGap, titlesStyle))
	}
	p.need(t.headHeight() + t.height(t.rowLines(rows[0])))
	t.titles()
	last := len(rows) - 1
	for i, row := range rows {
		switch i {
		case last - 1: // no row goes over to the next page alone
			t.under = t.height(t.rowLines(rows[last])) + under
		case last:
			t.under = under
		}
		t.row(row)
	}
	p.y += 3
}

// tableKeep is what a heading above a table keeps of the page: the whole table,
// where that isn't too much to move to the next one.
func (p *paper) tableKeep(columns []column, rows [][]cell) float64 {
	const most = 0.4 // of a page
	t := grid{p: p, widths: widths(columns, p.inner())}
	whole := float64(tableStart)
	for _, row := range rows {
		whole += t.height(t.rowLines(row))
	}
	if whole > most*(p.bottom()-margin) {
		return p.tableBegin(columns, rows)
	}
	return whole
}

// tableBegin is what a table needs of a page to begin on it: its titles and its
// first row.
func (p *paper) tableBegin(columns []column, rows [][]cell) float64 {
	if len(rows) == 0 {
		return 0
	}
	t := grid{p: p, widths: widths(columns, p.inner())}
	return max(tableStart, tableStart/2+t.height(t.rowLines(rows[0])))
}

// widths shares a width out to columns.
func widths(columns []column, whole float64) []float64 {
	sum := 0.0
	for _, c := range columns {
		sum += c.share
	}
	out := make([]float64, len(columns))
	for i, c := range columns {
		out[i] = whole * c.share / sum
	}
	return out
}
