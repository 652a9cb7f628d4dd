package practice

import (
	"strings"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/practice"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/report/picture"
)

// teller says a session in words.
type teller struct {
	desk    *desk.Desk // whose units are chosen
	analyst *evidence.Analyst
}

// session is a session as the trainee sees it, with a round in the drawing.
func (t teller) session(s *practice.Session, in place, shown int) view.Session {
	c := s.Seen()
	found := t.analyst.Analyse(&c)
	d := view.Session{
		Place: in.words, Title: kit.L("window.practice.case"), Complaint: t.complaintWords(c),
		Spent: kit.L("window.practice.spent", minutesText(s.Minutes())),
	}
	whole := s.Whole()
	d.Causes = answers(whole.Loop, s.Truth())
	groups := map[string]int{}
	for number, i := range s.Items() {
		title := kit.L("window.practice.checks")
		if i.Kind == practice.Point || i.Kind == practice.Dash {
			title = roundWords(whole.Rounds[i.At], i.At)
		}
		at, ok := groups[title]
		if !ok {
			at = len(d.Groups)
			groups[title] = at
			d.Groups = append(d.Groups, view.Group{Title: title})
		}
		item := view.Item{Number: number, Name: itemName(i), Cost: minutesText(i.Minutes), Bought: s.Has(i)}
		if item.Bought {
			item.Says = t.itemSays(whole, i)
			item.Short = item.Says
			if isLong(item.Says) {
				item.Short = "✓"
			}
		}
		d.Groups[at].Items = append(d.Groups[at].Items, item)
	}
	for _, i := range s.Bought() {
		if says := t.itemSays(whole, i); isLong(says) {
			d.Told = append([]view.Item{{Name: boughtName(whole, i), Says: says}}, d.Told...)
		}
	}
	if l, err := diagram.LoopByID(c.Loop.Layout); err == nil && shown < len(c.Rounds) {
		d.Drawing = drawing.Draw(l, picture.State(l, &c, found, shown, t.desk.By()), true)
	}
	return d
}

// answers are the causes that can be named: those that the loop has the parts for, or all, should it be noted wrongly.
func answers(l cases.Loop, truth cases.Cause) []cases.Cause {
	if l.Lacks(truth) {
		return cases.Words[cases.Cause]()
	}
	return l.Causes()
}

// complaintWords are what is told at the beginning.
func (t teller) complaintWords(c cases.Case) []string {
	out := []string{c.Complaint.Text}
	var symptoms, codes []string
	for _, s := range c.Complaint.Symptoms {
		symptoms = append(symptoms, s.Name())
	}
	for _, code := range c.Codes {
		codes = append(codes, code.Code)
	}
	if len(symptoms) > 0 {
		out = append(out, kit.L("window.practice.symptoms", strings.Join(symptoms, ", ")))
	}
	if len(codes) > 0 {
		out = append(out, kit.L("window.practice.codes", strings.Join(codes, ", ")))
	}
	if out[0] == "" {
		out[0] = kit.L("window.practice.silent")
	}
	return append(out, words.Vehicle(c, t.desk.Units))
}
