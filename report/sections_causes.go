package report

import (
	"loopbook/cases/diagnosis"
	"loopbook/diagram/say"
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
	s.heading(s.by.Of("record.causes"), tableStart+2*bodyStyle.lead())
	switch {
	case r.Blank:
		s.paragraph(s.by.Of("record.causes-blank"), smallStyle)
	case r.Draws == 0:
		s.paragraph(s.by.Of("record.causes-without"), smallStyle)
	default:
		s.paragraph(s.by.Of("record.causes-how", r.Draws), smallStyle)
	}
	s.y += 4
	var rows [][]cell
	rest := 0.0
	for i, c := range r.Causes {
		if i >= mostCauses || i >= firstCauses && c.Probability < leastChance {
			rest += c.Probability
			continue
		}
		rows = append(rows, []cell{{s.by.Say(c.Cause.Text()), i == 0}, {s.by.Say(percent(c.Probability)), i == 0}, {text: s.reasons(c.For)}, {text: s.reasons(c.Against)}})
	}
	s.table([]column{{s.by.Of("record.cause"), 20}, {s.by.Of("record.probability"), 13}, {s.by.Of("record.for"), 34}, {s.by.Of("record.against"), 33}}, rows)
	s.paragraph(s.by.Of("record.others", percent(rest)), smallStyle)
}

func percent(p float64) say.Text {
	if p > 0 && p < 0.01 {
		return say.Of("record.under-one")
	}
	return say.Of("record.percent", 100*p)
}

// reasons are the heaviest of them, one to a line.
func (s *sheet) reasons(list []diagnosis.Reason) string {
	const most = 3
	out := ""
	for i, r := range list[:min(len(list), most)] {
		if i > 0 {
			out += "\n"
		}
		out += "– " + s.by.Say(r.Words)
	}
	return out
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
		list = append(list, s.by.Of("record.next-row", c.Title(), c.Minutes)+" "+s.by.Say(c.Text())+" "+s.by.Say(c.Caution()))
	}
	s.bullets(margin, list, bodyStyle)
}
