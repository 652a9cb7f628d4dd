package window

import (
	"fmt"
	"math"
	"strings"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/practice"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// sessionData is a session as the trainee sees it.
func (w *window) sessionData() view.Session {
	p := w.trains
	s := p.session
	c := s.Seen()
	found := p.coach.Mind.Analyst.Analyse(&c)
	d := view.Session{
		Place: p.place(), Title: kit.L("window.practice.case"), Complaint: complaintWords(c, w),
		Spent: kit.L("window.practice.spent", minutesText(s.Minutes())),
	}
	whole := s.Whole()
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
			item.Says = w.itemSays(whole, i)
			item.Short = item.Says
			if isLong(item.Says) {
				item.Short = "✓"
			}
		}
		d.Groups[at].Items = append(d.Groups[at].Items, item)
	}
	for _, i := range s.Bought() {
		if says := w.itemSays(whole, i); isLong(says) {
			d.Told = append([]view.Item{{Name: boughtName(whole, i), Says: says}}, d.Told...)
		}
	}
	if l, err := diagram.LoopByID(c.Loop.Layout); err == nil && p.shown < len(c.Rounds) {
		d.Drawing = drawing.Draw(l, picture.State(l, &c, found, p.shown, w.at.Desk.By()), true)
	}
	return d
}

// longest is how many letters have room beside an item's name.
const longest = 14

func isLong(says string) bool { return len([]rune(says)) > longest }

func minutesText(m float64) string { return kit.L("window.practice.min", math.Round(m*10)/10) }

// complaintWords are what is told at the beginning.
func complaintWords(c cases.Case, w *window) []string {
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
	return append(out, words.Vehicle(c, w.at.Desk.Units))
}

func roundWords(r cases.Round, i int) string {
	name := kit.RoundName(r, i)
	if r.MinutesSinceStart != nil {
		return kit.L("window.practice.round-at", name, minutesText(*r.MinutesSinceStart))
	}
	return name
}

// signed is a score with a sign that can be seen.
func signed(bits float64) string { return strings.Replace(fmt.Sprintf("%.1f", bits), "-", "−", 1) }

func itemName(i practice.Item) string {
	switch i.Kind {
	case practice.Point:
		return kit.Capital(say.Place(i.Point).String())
	case practice.Dash:
		return kit.L("window.practice.dash")
	case practice.Log:
		return kit.L("window.practice.log")
	}
	return kit.Capital(i.Check.Name())
}

// boughtName is an item's name with its round, where it has one.
func boughtName(c cases.Case, i practice.Item) string {
	if i.Kind == practice.Point || i.Kind == practice.Dash {
		return kit.L("window.practice.in-round", itemName(i), kit.RoundName(c.Rounds[i.At], i.At))
	}
	return itemName(i)
}

// itemSays is what an item that was bought says.
func (w *window) itemSays(c cases.Case, i practice.Item) string {
	u := w.at.Desk.Units
	switch i.Kind {
	case practice.Point:
		return u.TempUnit(*c.Rounds[i.At].Reading(i.Point).ShownC)
	case practice.Dash:
		return dashWords(c.Rounds[i.At], w)
	case practice.Log:
		found := w.trains.coach.Mind.Analyst.Analyse(&c)
		if i.At >= len(found.WarmUps) {
			return ""
		}
		var words []string
		for _, f := range picture.WarmUpFacts(found.WarmUps[i.At].Result, w.at.Desk.By()) {
			words = append(words, f[0]+": "+f[1])
		}
		return strings.Join(words, "; ")
	}
	r := words.CheckResult(w.tables, &c, &c.Tests[i.At], u)
	words := r.Says
	for _, t := range r.Told {
		words += "\n" + t.Text
	}
	if words == "" {
		words = kit.L("window.practice.passed")
	}
	return strings.TrimSpace(words)
}

func dashWords(r cases.Round, w *window) string {
	var words []string
	if r.EctC != nil {
		words = append(words, kit.L("window.practice.scan", w.at.Desk.Units.TempUnit(*r.EctC)))
	}
	if r.Gauge != "" {
		words = append(words, kit.L("window.practice.gauge", r.Gauge.Name()))
	}
	if r.Fan != "" {
		words = append(words, kit.L("window.practice.fan", r.Fan.Name()))
	}
	return strings.Join(words, ", ")
}

// resultData explains an answer.
func (w *window) resultData(s *practice.Session, score practice.Score, named cases.Cause, confidence float64, beliefs []mind.Belief, own mind.Way) view.Result {
	d := view.Result{Good: score.Right, Steps: stepWords(s.Whole(), beliefs), Own: stepWords(s.Whole(), own.Steps), Lesson: s.Whole().Lesson}
	d.Head = kit.L("window.practice.was", s.Truth().Name())
	d.Score = []string{
		kit.L("window.practice.said", named.Name(), math.Round(100*confidence)),
		kit.L("window.practice.score-" + string(score.Verdict())),
		kit.L("window.practice.bits", signed(score.Bits), signed(score.Most), kit.Chance(score.TruthP)),
	}
	d.Minutes = kit.L("window.practice.took", minutesText(s.Minutes()), minutesText(own.Minutes))
	d.OwnWords = kit.L("window.practice.own-text", minutesText(own.Minutes))
	if !own.Settled {
		d.Minutes = kit.L("window.practice.took-all", minutesText(s.Minutes()))
		d.OwnWords = kit.L("window.practice.own-unsettled")
	}
	if len(w.trains.queue) > 0 {
		d.Next = kit.L("window.practice.next", len(w.trains.queue))
	}
	return d
}

func stepWords(c cases.Case, beliefs []mind.Belief) []view.Step {
	var out []view.Step
	for n, b := range beliefs {
		step := view.Step{Name: kit.L("window.practice.at-first"), Truth: b.TruthP, First: kit.L("window.practice.believes", kit.Chance(b.TruthP), b.First.Name())}
		if n > 0 {
			step.Name, step.Minutes = boughtName(c, b.Bought), minutesText(b.Bought.Minutes)
		}
		out = append(out, step)
	}
	return out
}
