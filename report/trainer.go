package report

import (
	"io"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
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
		t.troubleCodes(askHeight(2))
		t.ask(say.Of("trainer.ask.codes"), 2)
	}
	t.checks(say.Of("trainer.checks"), atCold)
	t.logs()
	for i := range t.c.Rounds {
		if r := &t.c.Rounds[i]; r.Stage != cases.AfterRepair && r.TellsWarmth() { // else it was only begun
			t.walk(i)
		}
	}
	t.checks(say.Of("trainer.more-checks"), afterMap)
	t.checks(say.Of("trainer.confirming"), toConfirm)
	t.heading(t.by.Of("trainer.yours"), 12*writeLead) // all four on one page
	t.ask(say.Of("trainer.ask.cause"), 1)
	t.ask(say.Of("trainer.ask.sure"), 1)
	t.ask(say.Of("trainer.ask.settle"), 2)
	t.ask(say.Of("trainer.ask.tell"), 3)
}

// writeLead is the height of a line to write on by hand.
const writeLead = 21

// askHeight is what a question of at most two lines takes with its lines to write
// on.
func askHeight(lines int) float64 {
	return 5 + 2*strongStyle.lead() + float64(lines)*writeLead
}

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
		sentence := t.by.Say(p.Sentence)
		t.heading(t.by.Of("record.proof"), t.linesHeight(bodyStyle, sentence)+t.lessonHeight())
		t.paragraph(sentence, bodyStyle)
	}
	t.lesson()
}
