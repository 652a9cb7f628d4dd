package report

import (
	"strings"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram/say"
)

// proof holds what was measured after the repair against what was before it, and says what is missing once anything
// was done. Hours at a loop that was found sound were no repair.
func (s *sheet) proof() {
	p, done := s.m.Proof, s.c.Repair
	worked := done.LabourHours != nil && s.c.Verdict.Cause != cases.Healthy
	if p == nil || !p.Measured && len(done.Parts) == 0 && !worked && len(done.StepsDone) == 0 {
		return
	}
	s.heading(s.by.Of("record.proof"), 3*bodyStyle.lead())
	s.paragraph(s.by.Say(p.Sentence), strongStyle)
	for _, pair := range p.Pairs {
		s.pair(pair)
	}
	var lone []string
	for _, l := range p.Lone {
		lone = append(lone, s.by.Of("record.lone", s.roundName(l.Round), l.Why))
	}
	s.space(4)
	s.bullets(margin, lone, smallStyle)
	s.afterCodes(p.Codes)
	s.flagList(p.Unexplained, say.Of("record.unexplained"), s.subheading)
	if len(p.Repeat) > 0 {
		s.subheading(s.by.Of("record.to-repeat"), 3*smallStyle.lead())
		s.bullets(margin, s.by.All(p.Repeat), smallStyle)
	}
}

// pair is a round before and its like after, point by point.
func (s *sheet) pair(p proof.Pair) {
	unit := string(s.by.Units.Temperature)
	var rows [][]cell
	for _, at := range p.Points {
		change := ""
		if k, ok := at.ChangeK(); ok {
			change = s.by.Say(say.Signed(k))
		}
		out := at.State.Out()
		rows = append(rows, []cell{
			{s.by.Say(say.PointName(at.Point)), out}, {text: s.bare(at.Before)}, {s.bare(at.After), out}, {text: change},
			{text: s.between(at.Expected)}, {s.by.Say(stateWord(at.State)), out},
		})
	}
	columns := []column{{s.by.Of("record.point"), 26}, {s.by.Of("record.before-in", unit), 14}, {s.by.Of("record.after-in", unit), 14}, {s.by.Of("record.change"), 14}, {s.by.Of("record.expected-in", unit), 16}, {s.by.Of("record.state"), 16}}
	s.subheading(s.by.Of("record.pair", s.roundName(p.Before), s.roundName(p.After)), s.tableKeep(columns, rows))
	s.table(columns, rows)
	if len(p.Open) > 0 {
		s.paragraph(s.by.Of("record.open-conditions", say.List(p.Open...)), softStyle)
	}
}

func (s *sheet) afterCodes(c proof.Codes) {
	if len(s.c.Codes) == 0 && !c.Read {
		return
	}
	value := say.Of("record.codes-unread")
	switch {
	case c.Read && len(c.After) == 0:
		value = say.Of("record.codes-none")
	case c.Read:
		value = say.Own(strings.Join(c.After, ", "))
	}
	s.facts(facts{{say.Of("record.codes-after"), value}}, 1)
}
