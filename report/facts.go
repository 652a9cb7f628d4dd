package report

import "loopbook/diagram/say"

// facts are labels with what is known to them.
type facts []fact

type fact struct{ label, value say.Text }

// add takes a value up unless nothing is known.
func (f *facts) add(label, value say.Text) {
	if !value.Empty() {
		*f = append(*f, fact{label, value})
	}
}

// note takes up what a person or a standard wrote.
func (f *facts) note(label say.Text, value string) {
	if value != "" {
		*f = append(*f, fact{label, say.Own(value)})
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
		label := min(labelWidth, w*0.43)
		t.widths = append(t.widths, label, w-label)
	}
	var rows [][]cell
	for len(list) > 0 {
		n := min(columns, len(list))
		var row []cell
		for _, f := range list[:n] {
			row = append(row, cell{text: p.by.Say(f.label)}, cell{text: p.by.Say(f.value)})
		}
		rows = append(rows, row)
		list = list[n:]
	}
	return t, rows
}

// section writes facts under a heading, unless there are none.
func (s *sheet) section(name say.Text, list facts, columns int) {
	if len(list) == 0 {
		s.none(name)
		return
	}
	s.heading(s.by.Say(name), s.factsHeight(list[:min(len(list), 2*columns)], columns))
	s.facts(list, columns)
}
