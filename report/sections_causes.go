package report

import (
	"slices"
	"strings"

	"loopbook/cases/diagnosis"
)

// The first causes are told, and those with a chance that counts, up to so many.
const (
	leastChance = 0.01
	firstCauses = 3
	mostCauses  = 8
)

// causes is the ranking before the repair with what speaks for and against.
func (s *sheet) causes() {
	r := s.m.Causes
	if r == nil {
		return
	}
	told := tellable(*r)
	columns, rows := s.causeTable(told, r.Blank)
	s.heading(s.by.Of("record.causes"), 2*bodyStyle.lead()+s.tableBegin(columns, rows))
	switch {
	case r.Blank:
		s.paragraph(s.by.Of("record.causes-blank"), smallStyle)
	case r.Draws == 0:
		s.paragraph(s.by.Of("record.causes-without"), smallStyle)
	default:
		s.paragraph(s.by.Of("record.causes-how", r.Draws), smallStyle)
	}
	s.y += 4
	s.tableWith(columns, rows, 3+smallStyle.lead())
	rest := 0.0
	for _, c := range r.Causes[len(told):] {
		rest += c.Probability
	}
	s.paragraph(s.by.Of("record.others", diagnosis.Chance(rest)), smallStyle)
}

// causeTable has no place for reasons where nothing speaks for or against.
func (s *sheet) causeTable(told []diagnosis.Ranked, blank bool) (columns []column, rows [][]cell) {
	columns = []column{{s.by.Of("record.cause"), 20}, {s.by.Of("record.probability"), 11}, {s.by.Of("record.for"), 37}, {s.by.Of("record.against"), 32}}
	if blank {
		columns = []column{{columns[0].title, 40}, {columns[1].title, 60}}
	}
	for i, c := range told {
		row := []cell{{s.by.Say(c.Cause.Text()), i == 0}, {s.by.Say(diagnosis.Chance(c.Probability)), i == 0}, {text: s.reasons(c.For)}, {text: s.reasons(c.Against)}}
		rows = append(rows, row[:len(columns)])
	}
	return columns, rows
}

// tellable are the causes that the table has a row for, each with its reasons.
func tellable(r diagnosis.Ranking) []diagnosis.Ranked {
	n := 0
	for n < min(len(r.Causes), mostCauses) && (n < firstCauses || r.Causes[n].Probability >= leastChance) {
		n++
	}
	r.Causes = slices.Clone(r.Causes[:n])
	r.Explain(n)
	return r.Causes
}

// reasons are the heaviest of them, one to a line.
func (s *sheet) reasons(list []diagnosis.Reason) string {
	const most = 3
	var lines []string
	for _, r := range list[:min(len(list), most)] {
		lines = append(lines, "– "+s.by.Say(r.Words))
	}
	return strings.Join(lines, "\n")
}

// beside is what the judged cause is no reason for, with the check that would tell what is.
func (s *sheet) beside() {
	b := s.m.Beside
	if b == nil {
		return
	}
	s.subheading(s.by.Of("beside.title"), 3*bodyStyle.lead())
	s.paragraph(s.by.Say(b.Words()), bodyStyle)
	if len(b.Next) > 0 {
		s.bullets(margin, []string{s.checkRow(b.Next[0])}, bodyStyle)
	}
}

// next are the checks that would tell most, while there is no verdict.
func (s *sheet) next() {
	if s.c.Verdict.Cause != "" || len(s.m.Next) == 0 {
		return
	}
	const most = 5
	s.heading(s.by.Of("record.next"), 3*bodyStyle.lead())
	var list []string
	for _, c := range s.m.Next[:min(len(s.m.Next), most)] {
		list = append(list, s.checkRow(c))
	}
	s.bullets(margin, list, bodyStyle)
}

func (s *sheet) checkRow(c diagnosis.Check) string {
	return s.by.Of("record.next-row", c.Heading(), c.Minutes) + " " + s.by.Say(c.Doing())
}
