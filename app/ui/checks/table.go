package checks

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// table is a list of points, one a line, with an empty line for the next.
// Enter goes along the line and on to the next; an emptied line goes away.
type table struct {
	s       *sheet
	what    string
	columns []column
	length  func(*cases.Test) int
	grow    func(*cases.Test)
	drop    func(t *cases.Test, row int) // a line that holds nothing any more
	ending  func(row int) ending         // a choice at the end of a line; may be nil

	heads    []*widget.Label
	rows     []*tableRow
	box      *fyne.Container
	refusals *kit.Refusals
}

// column is one number of a line.
type column struct {
	title func(units.Set) string
	read  func(t *cases.Test, row int, u units.Set) string
	write func(t *cases.Test, row int, text string, u units.Set) error
}

// ending is what stands at the end of a line.
type ending struct {
	object fyne.CanvasObject
	show   func(*cases.Test)
}

type tableRow struct {
	fields []*kit.Field
	end    ending
}

func (s *sheet) table(t *table) fyne.CanvasObject {
	t.s, t.box = s, container.NewVBox()
	head := container.New(t.shares())
	for range t.columns {
		l := kit.Small("")
		t.heads = append(t.heads, l)
		head.Add(l)
	}
	if t.ending != nil {
		head.Add(kit.Small(kit.L("window.checks.water-is")))
	}
	s.more = append(s.more, t)
	t.refusals = kit.NewRefusals(container.New(kit.Tight{}, head, t.box))
	t.rowsTo(1)
	return t.refusals.Content
}

func (t *table) shares() kit.Shares {
	out := kit.Shares{}
	for range t.columns {
		out = append(out, 100)
	}
	if t.ending != nil {
		out = append(out, 130)
	}
	return out
}

// show keeps the rows there are, so that the caret stays where it is.
func (t *table) show(test *cases.Test) {
	for i, c := range t.columns {
		t.heads[i].SetText(c.title(t.s.v.units))
	}
	n := t.length(test)
	t.rowsTo(n + 1)
	for i, row := range t.rows {
		for j, c := range t.columns {
			text := ""
			if i < n {
				text = c.read(test, i, t.s.v.units)
			}
			row.fields[j].Title(c.title(t.s.v.units))
			row.fields[j].Put(text)
		}
		if row.end.show != nil {
			row.end.show(test)
		}
	}
}

func (t *table) leave() {
	for _, row := range t.rows {
		for _, f := range row.fields {
			f.Leave()
		}
	}
}

func (t *table) rowsTo(n int) {
	for len(t.rows) < n {
		t.addRow()
	}
	if len(t.rows) > n {
		t.rows = t.rows[:n]
		t.box.Objects = t.box.Objects[:n]
		t.box.Refresh()
	}
}

func (t *table) addRow() {
	at, row := len(t.rows), &tableRow{}
	line := container.New(t.shares())
	for j := range t.columns {
		row.fields = append(row.fields, t.field(at, j))
		line.Add(row.fields[j])
	}
	if t.ending != nil {
		row.end = t.ending(at)
		line.Add(row.end.object)
	}
	t.rows = append(t.rows, row)
	t.box.Add(line)
	t.refusals.Take(line)
}

func (t *table) field(row, j int) *kit.Field {
	var f *kit.Field
	f = kit.NewField("", func(text string) {
		trial := cases.Test{}
		t.line(&trial, row)
		err := t.columns[j].write(&trial, row, text, t.s.v.units)
		f.Refuse(err)
		if err == nil {
			t.s.change(t.what, func(test *cases.Test) { t.write(test, row, j, text) })
		}
	})
	f.After = func() fyne.Focusable { return t.after(row, j) }
	return f
}

// after is where Enter goes on to: along the line, then to the next one, past
// what is chosen at a line's end, which would swallow the digits that follow.
// From the empty line it leaves the table: nil.
func (t *table) after(row, j int) fyne.Focusable {
	if j++; j == len(t.columns) {
		row, j = row+1, 0
	}
	if row >= len(t.rows) {
		return nil
	}
	return t.rows[row].fields[j]
}

// write puts a number into its line, which may be the next one.
func (t *table) write(test *cases.Test, row, j int, text string) {
	row = min(row, t.length(test))
	t.line(test, row)
	_ = t.columns[j].write(test, row, text, t.s.v.units) // tried before
	t.drop(test, row)
}

// line makes sure that there is such a line.
func (t *table) line(test *cases.Test, row int) {
	for t.length(test) <= row {
		t.grow(test)
	}
}
