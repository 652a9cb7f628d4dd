package report

import (
	"io"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
	"loopbook/report/picture"
)

// writeTrainer writes the sheet for the class: the evidence in the order it
// comes at the bay, bare of all judgement, each piece with a question and room to
// write; then the answer, on a page of its own. What was done after the repair
// belongs to the answer. The case is printed as it is given: who wants it
// without its customer makes it so before.
func writeTrainer(w io.Writer, m Material, o Options) error {
	s, err := newSheet(m, o, about{title: say.Of("trainer.head"), subject: say.Of("trainer.subject"), foot: say.Of("trainer.foot")})
	if err != nil {
		return err
	}
	t := trainer{sheet: s, muted: muted(m.Found)}
	t.question()
	if !o.WithoutAnswer {
		t.page()
		t.answer()
	}
	return t.write(w)
}

// trainer is a sheet for the class on its way to the paper.
type trainer struct {
	*sheet
	muted evidence.Findings // the readings as shown, without what they mean
}

// muted takes off all that would judge for the trainee.
func muted(f evidence.Findings) evidence.Findings {
	out := evidence.Findings{WarmUps: f.WarmUps}
	for _, r := range f.Rounds {
		readings := make(map[diagram.Point]evidence.Reading, len(r.Readings))
		for p, reading := range r.Readings {
			readings[p] = evidence.Reading{Point: reading.Point, ShownC: reading.ShownC, TrueC: reading.ShownC, Surface: reading.Surface}
		}
		out.Rounds = append(out.Rounds, evidence.Round{Readings: readings, EngineC: r.EngineC})
	}
	return out
}

func (t *trainer) question() {
	t.unjudged = true
	t.paragraph(t.by.Of("trainer.kicker"), softStyle)
	t.y += 2
	t.paragraph(t.by.Of("trainer.head"), titleStyle)
	t.paragraph(t.by.Of("trainer.how"), smallStyle)
	t.y += 6
	t.cautions()
	t.section(say.Of("record.vehicle"), t.vehicleFacts(), 2)
	t.fitted()
	t.complaint()
	t.ask(say.Of("trainer.ask.complaint"), 4)
	if len(t.c.Codes) > 0 {
		t.troubleCodes()
		t.ask(say.Of("trainer.ask.codes"), 2)
	}
	t.checks(false)
	t.logs()
	for i := range t.c.Rounds {
		if t.c.Rounds[i].Stage != cases.AfterRepair {
			t.walk(i)
		}
	}
	t.checks(true)
	t.heading(t.by.Of("trainer.yours"), 12*writeLead) // all four on one page
	t.ask(say.Of("trainer.ask.cause"), 1)
	t.ask(say.Of("trainer.ask.sure"), 1)
	t.ask(say.Of("trainer.ask.settle"), 2)
	t.ask(say.Of("trainer.ask.tell"), 3)
}

// checks are the workshop checks before the repair: those that only confirmed
// come last.
func (t *trainer) checks(confirming bool) {
	first := true
	for i := range t.c.Tests {
		test := &t.c.Tests[i]
		if test.Stage == cases.AfterRepair || (string(test.Kind) == t.c.Verdict.ConfirmedBy) != confirming {
			continue
		}
		list := measured(test)
		keep := t.factsHeight(list, 2) + t.firstHeight(test)
		if first {
			head := say.Of("trainer.checks")
			if confirming {
				head = say.Of("trainer.confirming")
			}
			t.heading(t.by.Say(head), subStyle.lead()+10+keep)
			first = false
		}
		t.subheading(t.by.Of("capital", test.Kind.Text()), keep)
		t.test(test, list)
	}
	if !first {
		t.ask(say.Of("trainer.ask.checks"), 3)
	}
}

// logs are the warm-ups without what is read from them.
func (t *trainer) logs() {
	for i := range t.c.Logs {
		l := &t.c.Logs[i]
		if l.Stage == cases.AfterRepair || i >= len(t.f.WarmUps) {
			continue
		}
		t.heading(t.by.Of("trainer.warm-up"), chartHeight+5*writeLead)
		t.plot(picture.WarmUp(t.c, l, warmup.Result{TargetC: t.f.WarmUps[i].Result.TargetC}, nil, t.by), 1, chartHeight)
		t.ask(say.Of("trainer.ask.warm-up"), 3)
	}
}

// walk is a round with its readings on the drawing, which takes what the page has
// left.
func (t *trainer) walk(i int) {
	const answer = 6 * writeLead // the question under it and its lines
	const least = 0.94           // of a record's drawing, before it goes over to the next page
	list := t.conditions(i)
	keep := t.factsHeight(list, 3) + answer
	var d drawing.Picture
	if t.loop != nil {
		state := picture.State(t.loop, t.c, t.muted, i, t.by)
		state.Thermostat = drawing.NotKnown // it is read from the hoses
		d = drawing.Draw(t.loop, state, true)
		keep += d.Height * t.drawScale(d, least*t.mostDrawn())
	}
	t.heading(t.by.Say(t.roundName(i)), keep)
	t.facts(list, 3)
	if t.loop != nil {
		t.draw(d, t.bottom()-t.y-answer)
		t.y += 4
	} else {
		t.shownReadings(i)
	}
	t.ask(say.Of("trainer.ask.round"), 4)
}

// shownReadings are a round's readings where there is no drawing for them.
func (t *trainer) shownReadings(i int) {
	var rows [][]cell
	for _, r := range alongFlow(t.c.Rounds[i].Readings) {
		rows = append(rows, cells(t.by.Say(say.PointName(r.Point)), t.bare(r.ShownC), t.by.Say(surface(r))))
	}
	t.table([]column{{t.by.Of("record.point"), 2}, {t.by.Of("record.shown", string(t.by.Units.Temperature)), 1}, {t.by.Of("record.on"), 1}}, rows)
}

// writeLead is the height of a line to write on by hand.
const writeLead = 21

// ask puts a question with lines to write on under it.
func (t *trainer) ask(question say.Text, lines int) {
	t.space(5)
	text := t.lines(t.by.Say(question), t.inner(), strongStyle)
	t.need(float64(len(text))*strongStyle.lead() + float64(lines)*writeLead)
	t.flow(margin, text, strongStyle)
	for range lines {
		t.y += writeLead
		t.rule(margin, t.y, t.inner(), drawing.PartLine)
	}
	t.y += 6
}

// answer is what the evidence says, what it was, and whether the repair proved
// it.
func (t *trainer) answer() {
	t.paragraph(t.by.Of("trainer.answer"), softStyle)
	t.y += 2
	t.paragraph(t.by.Say(title(t.c)), titleStyle)
	t.y += 4
	t.verdict()
	t.causes()
	for i := range t.c.Rounds {
		if list := t.flagsOf(i); len(list) > 0 {
			t.flagList(list, t.roundName(i), t.subheading)
		}
	}
	t.wholeCase()
	for i := range t.c.Tests {
		if flags := t.check[i].Flags; len(flags) > 0 {
			t.flagList(flags, testName(&t.c.Tests[i]), t.subheading)
		}
	}
	if p := t.m.Proof; p != nil && p.Measured {
		t.heading(t.by.Of("record.proof"), 3*bodyStyle.lead())
		t.paragraph(t.by.Say(p.Sentence), bodyStyle)
	}
	if t.c.Lesson != "" {
		t.heading(t.by.Of("record.lesson"), 3*bodyStyle.lead())
		t.note(t.c.Lesson)
	}
}
