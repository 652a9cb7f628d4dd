package report

import "loopbook/diagram/drawing"

// grid is a table on its way to the paper.
type grid struct {
	p      *paper
	widths []float64
	head   [][]string // the titles' lines; none for a grid without titles
	under  float64    // what the row to come keeps room for under it
	bare   bool       // facts: no lines between the rows, no room at the left
}

func (t *grid) rowLines(row []cell) [][]string {
	out := make([][]string, len(row))
	for i, c := range row {
		width := t.widths[i]
		if i == len(row)-1 {
			width = t.rest(i)
		}
		out[i] = t.p.lines(c.text, width-cellGap, c.style())
	}
	return out
}

// rest is the width from a column on, which the last cell of a short row may take.
func (t *grid) rest(from int) float64 {
	sum := 0.0
	for _, w := range t.widths[from:] {
		sum += w
	}
	return sum
}

func (c cell) style() style {
	s := smallStyle
	s.bold = c.strong
	return s
}

// height is a row's, of a long one that of what stays together.
func (t *grid) height(lines [][]string) float64 {
	return float64(min(longest(lines), oneRow))*smallStyle.lead() + 2*rowGap
}

func (t *grid) headHeight() float64 {
	return float64(longest(t.head))*10 + 2*rowGap
}

func (t *grid) titles() {
	if t.head == nil {
		return
	}
	p, h := t.p, t.headHeight()
	p.fill(drawing.In(drawing.Rail))
	p.pdf.Rect(margin, p.y, p.inner(), h, "F")
	x := float64(margin)
	for i, lines := range t.head {
		for j, line := range lines {
			p.put(x+cellGap/2, p.y+rowGap+float64(j)*10, line, titlesStyle)
		}
		x += t.widths[i]
	}
	p.y += h
	p.rule(margin, p.y, p.inner(), drawing.PartLine)
}

// row writes one row, in pieces where no page is high enough for it.
func (t *grid) row(row []cell) {
	lead := smallStyle.lead()
	lines := t.rowLines(row)
	for from, n := 0, longest(lines); from < n; {
		left := n - from
		t.room(float64(min(left, oneRow))*lead + 2*rowGap + t.under)
		piece := max(1, min(left, int((t.p.bottom()-t.p.y-2*rowGap)/lead)))
		t.piece(row, lines, from, from+piece)
		from += piece
	}
	if !t.bare {
		t.p.rule(margin, t.p.y, t.p.inner(), drawing.Rule)
	}
}

// room begins a new page with the titles again where less than h is left.
func (t *grid) room(h float64) {
	if t.p.y+h > t.p.bottom() {
		t.p.page()
		t.titles()
	}
}

func (t *grid) piece(row []cell, lines [][]string, from, to int) {
	x, lead := float64(margin), smallStyle.lead()
	for i, c := range row {
		for j := from; j < min(to, len(lines[i])); j++ {
			t.p.put(x+t.inset(), t.p.y+rowGap+float64(j-from)*lead, lines[i][j], t.style(i, c))
		}
		x += t.widths[i]
	}
	t.p.y += float64(to-from)*lead + 2*rowGap
}

func (t *grid) inset() float64 {
	if t.bare {
		return 0
	}
	return cellGap / 2
}

// style is a cell's; in a grid of facts every other cell is a label.
func (t *grid) style(i int, c cell) style {
	s := c.style()
	if t.bare && i%2 == 0 {
		s.ink = drawing.Soft
	}
	return s
}

func longest(cells [][]string) int {
	n := 0
	for _, lines := range cells {
		n = max(n, len(lines))
	}
	return n
}
