package report

import (
	"loopbook/cases"
	"loopbook/cases/access"
	"loopbook/cases/money"
	"loopbook/diagram/say"
)

func (s *sheet) verdict() {
	v := s.c.Verdict
	var list facts
	list.add(say.Of("record.cause"), v.Cause.Text())
	list.add(say.Of("record.confirmed-by"), cases.Confirmation(v.ConfirmedBy))
	list.add(say.Of("record.ruled-out"), s.ruledOut())
	if v.Cause == "" && v.ConfirmedBy == "" && v.Note == "" {
		s.none(say.Of("record.verdict"))
		return
	}
	s.heading(s.by.Of("record.verdict"), s.factsHeight(list, 1))
	s.facts(list, 1)
	s.note(v.Note)
}

// ruledOut are the faults that what was measured leaves hardly a chance.
func (s *sheet) ruledOut() say.Text {
	if s.m.Causes == nil || s.m.Causes.Blank {
		return say.Text{}
	}
	var list []say.Text
	for _, c := range s.m.Causes.RuledOut(s.m.Beside) {
		list = append(list, c.Text())
	}
	return say.List(list...)
}

func (s *sheet) repair() {
	rep := s.c.Repair
	var list facts
	list.add(say.Of("record.labour"), quantity("record.hours", rep.LabourHours))
	if len(rep.Parts) == 0 && len(list) == 0 && rep.AccessNote == "" && len(rep.StepsDone) == 0 {
		s.none(say.Of("record.repair"))
		return
	}
	columns, rows, err := s.bill()
	s.heading(s.by.Of("record.repair"), s.tableKeep(columns, rows))
	if err != nil { // what is kept is shown all the same
		s.paragraph(s.by.Of("record.bill-refused", err.Error()), bodyStyle)
	}
	s.table(columns, rows)
	s.facts(list, 1)
	if rep.AccessNote != "" {
		s.paragraph(s.by.Of("record.access", rep.AccessNote), bodyStyle)
	}
	s.steps()
}

// bill is the table of the parts and, where prices are noted, of what they come to.
func (s *sheet) bill() (columns []column, rows [][]cell, err error) {
	b, err := money.Of(s.c.Repair)
	if err != nil {
		return nil, nil, err
	}
	for _, l := range b.Parts {
		rows = append(rows, s.billLine(b, l.Name, l))
	}
	if b.Labour != nil {
		rows = append(rows, s.billLine(b, s.by.Of("record.labour"), *b.Labour))
	}
	if !b.Empty() {
		sum := func(key say.Text, a money.Amount, strong bool) {
			rows = append(rows, []cell{{s.by.Say(key), strong}, {}, {}, {b.Currency.Write(a, s.by.Lang), strong}})
		}
		if b.TaxPercent != nil {
			sum(say.Of("record.subtotal"), b.Subtotal, false)
			sum(say.Of("record.tax", b.TaxPercent.Write(s.by.Lang)), b.Tax, false)
		}
		sum(say.Of("record.total"), b.Total, true)
	}
	columns = []column{{s.by.Of("record.part"), 5}, {s.by.Of("record.quantity"), 1}, {s.by.Of("record.each"), 1.4}, {s.by.Of("record.sum"), 1.6}}
	return columns, rows, nil
}

func (s *sheet) billLine(b money.Bill, name string, l money.Line) []cell {
	if l.Each == nil {
		return cells(name, l.Quantity.Write(s.by.Lang), "", "")
	}
	return cells(name, l.Quantity.Write(s.by.Lang), b.Currency.Write(*l.Each, s.by.Lang), b.Currency.Write(l.Sum, s.by.Lang))
}

// steps are those of filling and bleeding, as soon as one of them is ticked.
func (s *sheet) steps() {
	advice, err := access.For(s.c)
	if err != nil || len(s.c.Repair.StepsDone) == 0 || len(advice.Steps) == 0 {
		return
	}
	s.subheading(s.by.Of("record.steps"), tableStart)
	var rows [][]cell
	for _, step := range advice.Steps {
		done := say.Of("record.step-open")
		if step.Done {
			done = say.Of("record.step-done")
		}
		rows = append(rows, cells(s.by.Say(step.Text), s.by.Say(done)))
	}
	s.table([]column{{s.by.Of("record.step"), 6}, {s.by.Of("record.state"), 1}}, rows)
}
