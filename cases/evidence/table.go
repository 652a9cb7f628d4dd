package evidence

import (
	"loopbook/assets"
	"loopbook/cases"
	"loopbook/diagram"
)

// Table is an Expecter that looks ranges up in rows of the trade's rules. It
// is immutable.
type Table struct{ rows tableRows }

// Shipped is the table that comes with the program.
func Shipped() (*Table, error) { return LoadTable(assets.Expected) }

// LoadTable reads and checks a table's JSON. An error names the row and the
// key.
func LoadTable(text []byte) (*Table, error) {
	rows, err := readRows(text)
	if err != nil {
		return nil, err
	}
	return &Table{rows}, nil
}

// Expect holds the first row that fits for each delta and point.
func (t *Table) Expect(c *cases.Case, round int) Expectation {
	m := newMoment(c, round)
	e := Expectation{EngineC: m.engine.c, Points: map[diagram.Point]Range{}, Deltas: map[string]Span{}}
	here := m.conditions()
	for _, r := range t.rows.Deltas {
		if _, found := e.Deltas[r.Name]; !found && r.When.fits(here) {
			e.Deltas[r.Name] = Span{LowK: r.LowK, HighK: r.HighK, Source: r.Source.text(), Class: r.Class}
		}
	}
	for _, r := range t.rows.Points {
		_, found := e.Points[r.Point]
		if base, known := m.base(r.From); known && !found && r.When.fits(here) {
			e.Points[r.Point] = Range{
				LowC: base + diagram.Celsius(*r.LowK), HighC: base + diagram.Celsius(*r.HighK),
				Source: r.Source.text(), Class: r.Class,
			}
		}
	}
	return e
}

// base is the temperature that a point's range is counted from.
func (m *moment) base(from string) (diagram.Celsius, bool) {
	switch {
	case from == fromRating:
		return m.rating.opensC, true
	case from == fromAmbient:
		return m.ambientC, true
	case m.engine.c != nil:
		return *m.engine.c, true
	}
	return 0, false
}
