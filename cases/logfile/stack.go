package logfile

import (
	"math"
	"slices"
	"strings"
)

// maxSignals is how many signals a stack may name; a column of more texts is a note.
const maxSignals = 500

// stack is a table that has a row for each value: one column names the signal, another holds what it was.
type stack struct {
	*layout
	name, value int
	units       int   // column; -1: none
	kept        []int // the other columns, the time among them
	place       map[string]int
	signals     []string // headings, each with its unit
}

// findStack is how the table stacks its signals, or nil if it has a column for each. The coolant's
// temperature is named in cells then, and in no heading.
func (l *layout) findStack(head []byte) (*stack, error) {
	if slices.ContainsFunc(l.header, l.words.namesCoolant) {
		return nil, nil
	}
	rows, err := l.dataRows(head, searchedLines)
	if err != nil {
		return nil, err
	}
	s := &stack{layout: l, place: map[string]int{}}
	if s.name = l.column(func(i int) bool { return l.namesSignals(rows, i) }); s.name < 0 {
		return nil, nil
	}
	s.value = s.valueColumn(rows)
	s.units = l.column(func(i int) bool { return i != s.name && mostly(rows, i, isUnit) })
	for i := range l.header {
		if i != s.name && i != s.value && i != s.units {
			s.kept = append(s.kept, i)
		}
	}
	if s.value < 0 || len(s.kept) == 0 {
		return nil, nil
	}
	all, err := l.dataRows(head, math.MaxInt)
	for _, r := range all {
		s.meet(r)
	}
	if len(s.signals) > maxSignals {
		return nil, nil
	}
	return s, err
}

// dataRows are the first rows below the heading.
func (l *layout) dataRows(head []byte, most int) ([]row, error) {
	rows, err := firstRows(head, l.end, l.delim, most)
	return slices.DeleteFunc(rows, func(r row) bool { return r.line < l.firstData }), err
}

// meet gives a row's signal its place, if it is a new one.
func (s *stack) meet(r row) {
	name := r.cell(s.name)
	if _, met := s.place[name]; met || missing([]byte(name)) {
		return
	}
	s.place[name] = len(s.signals)
	if u := r.cell(s.units); u != "" {
		name += " [" + strings.Trim(u, "[](){} ") + "]"
	}
	s.signals = append(s.signals, name)
}

// valueColumn is the one that holds numbers beside the coolant's name and isn't the time: by its heading, or the
// only one; -1: none.
func (s *stack) valueColumn(rows []row) int {
	coolant := slices.DeleteFunc(slices.Clone(rows), func(r row) bool { return !s.words.namesCoolant(r.cell(s.name)) })
	var all []int
	for i, h := range s.header {
		if i == s.name || !mostly(coolant, i, isNumber) || s.words.keyOf(h) == Time || s.goesOn(rows, i) {
			continue
		}
		if saysValue(h) {
			return i
		}
		all = append(all, i)
	}
	if len(all) == 1 {
		return all[0]
	}
	return -1
}

// saysValue knows the headings of a column that holds whatever was measured. From memory.
func saysValue(heading string) bool {
	switch strings.ToLower(heading) {
	case "value", "values", "val", "reading", "wert", "werte", "messwert", "valor", "valores", "lectura":
		return true
	}
	return false
}

// column is the first that is so, or -1.
func (l *layout) column(is func(i int) bool) int {
	for i := range l.header {
		if is(i) {
			return i
		}
	}
	return -1
}

// namesSignals reports whether a column's cells are names that come again, the coolant's among them.
func (l *layout) namesSignals(rows []row, i int) bool {
	if !mostly(rows, i, func(c string) bool { return !isValue(c) }) {
		return false
	}
	names, coolant := map[string]bool{}, false
	for _, r := range rows {
		if name := r.cell(i); !names[name] {
			names[name] = true
			coolant = coolant || l.words.namesCoolant(name)
		}
	}
	return coolant && 2*len(names) <= len(rows)
}

func isUnit(cell string) bool { _, is := unitOf(cell); return is }

func isNumber(cell string) bool {
	_, rest, ok := decimal{'.'}.number([]byte(cell))
	return ok && (len(rest) == 0 || isUnit(string(rest)))
}

// mostly reports whether nine in ten of a column's filled cells are so.
func mostly(rows []row, i int, is func(string) bool) bool {
	filled, so := 0, 0
	for _, r := range rows {
		if c := r.cell(i); !missing([]byte(c)) {
			filled++
			if is(c) {
				so++
			}
		}
	}
	return filled > 0 && 10*so >= 9*filled
}

// goesOn reports whether a column's numbers never fall, as those of a clock or a counter.
func (s *stack) goesOn(rows []row, i int) bool {
	before := math.Inf(-1)
	for _, r := range rows {
		v, _, ok := s.decimal.number([]byte(r.cell(i)))
		if ok && v < before {
			return false
		}
		if ok {
			before = v
		}
	}
	return true
}

// cell is a row's text in a column, or "".
func (r row) cell(i int) string {
	if i < 0 || i >= len(r.cells) {
		return ""
	}
	return r.cells[i]
}

// wide is the layout of the table once it is unstacked.
func (s *stack) wide() *layout {
	w := *s.layout
	w.header, w.units, w.end = nil, nil, '\n'
	for _, i := range s.kept {
		w.header = append(w.header, s.header[i])
	}
	w.header = append(w.header, s.signals...)
	return &w
}
