package report

import (
	"loopbook/cases"
	"loopbook/cases/access"
	"loopbook/cases/diagnosis"
	"loopbook/cases/money"
	"loopbook/diagram/say"
)

func (s *sheet) verdict() {
	v := s.c.Verdict
	var list facts
	list.add(say.Of("record.cause"), v.Cause.Text())
	list.add(say.Of("record.confirmed-by"), cases.Confirmation(v.ConfirmedBy))
	list.add(say.Of("record.measured-says"), s.otherwise())
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
	return say.List(texts(s.m.Causes.RuledOut(s.m.Beside))...)
}

// otherwise is how likely the verdict's cause is by what was measured, where another one is likelier.
func (s *sheet) otherwise() say.Text {
	r, cause := s.m.Causes, s.c.Verdict.Cause
	if r == nil || r.Blank || cause == "" || len(r.Causes) == 0 || r.Causes[0].Cause == cause {
		return say.Text{}
	}
	for _, c := range r.Causes {
		if c.Cause == cause {
			return say.Of("record.otherwise", diagnosis.Chance(c.Probability), r.Causes[0].Cause.Text(), diagnosis.Chance(r.Causes[0].Probability))
		}
	}
	return say.Text{}
}

func (s *sheet) repair() {
	rep := s.c.Repair
	var list facts
	columns, rows, err := s.bill()
	if rep.LabourPricePerHour == nil || err != nil { // else it is in the bill
		list.add(say.Of("record.labour"), quantity("record.hours", rep.LabourHours))
	}
	if len(rep.Parts) == 0 && len(list) == 0 && rep.AccessNote == "" && len(rep.StepsDone) == 0 {
		s.none(say.Of("record.repair"))
		return
	}
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
		line := s.billLine(b, s.by.Of("record.labour"), *b.Labour)
		line[1].text = s.by.Of("record.hours", *s.c.Repair.LabourHours)
		rows = append(rows, line)
	}
	if !b.Empty() {
		sum := func(key say.Text, a money.Amount, strong bool) {
			rows = append(rows, []cell{{s.by.Say(key), strong}, {}, {}, {b.Currency.Write(a, s.by.Lang), strong}})
		}
		if b.TaxPercent != nil {
			sum(say.Of("record.subtotal"), b.Subtotal, false)
			sum(say.Of("record.tax", b.TaxPercent.Write(s.by.Lang)), b.Tax, false)
		}
		sum(totalOf(b), b.Total, true)
	}
	columns = []column{{s.by.Of("record.part"), 5}, {s.by.Of("record.quantity"), 1}, {s.by.Of("record.each"), 1.4}, {s.by.Of("record.sum"), 1.6}}
	return columns, rows, nil
}

// totalOf names the sum: it is of all only where all has its price.
func totalOf(b money.Bill) say.Text {
	if b.Unpriced > 0 || b.NoRate {
		return say.Of("record.total-priced")
	}
	return say.Of("record.total")
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
