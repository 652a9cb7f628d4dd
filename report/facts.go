package report

import "math"

// facts are labels with what is known to them.
type facts []fact

type fact struct{ label, value string }

// add takes a value up unless nothing is known.
func (f *facts) add(label, value string) {
	if value != "" {
		*f = append(*f, fact{label, value})
	}
}

// labelWidth is the most that a label takes of the width.
const labelWidth = 104

// facts writes labels and values in so many columns, along the rows.
func (p *paper) facts(list facts, columns int) {
	t, rows := p.factGrid(list, columns)
	for _, row := range rows {
		t.row(row)
	}
	p.y += 2
}

// factsHeight is what the facts take if no page ends among them.
func (p *paper) factsHeight(list facts, columns int) float64 {
	t, rows := p.factGrid(list, columns)
	h := 2.0
	for _, row := range rows {
		h += t.height(t.rowLines(row))
	}
	return h
}

func (p *paper) factGrid(list facts, columns int) (grid, [][]cell) {
	t := grid{p: p, bare: true}
	for range columns {
		w := p.inner() / float64(columns)
		label := math.Min(labelWidth, w*0.43)
		t.widths = append(t.widths, label, w-label)
	}
	var rows [][]cell
	for len(list) > 0 {
		n := min(columns, len(list))
		var row []cell
		for _, f := range list[:n] {
			row = append(row, cell{text: f.label}, cell{text: f.value})
		}
		rows = append(rows, row)
		list = list[n:]
	}
	return t, rows
}
