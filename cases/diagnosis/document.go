package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// Fill adds causes and next checks to the analysis's document; a case with
// nothing to go on gets a flag that says so, and so does what the judged cause leaves open.
func Fill(a *evidence.Answer, r Ranking, next []Check, beside *Beside) {
	for _, c := range r.Causes {
		a.Causes = append(a.Causes, evidence.CauseAnswer{ID: c.Cause, Probability: c.Probability, For: told(c.For), Against: told(c.Against)})
	}
	for _, n := range next {
		a.Next = append(a.Next, evidence.CheckAnswer{
			Check: n.Check.Check, Point: n.Point, Minutes: n.Minutes, Bits: math.Round(n.Bits*1e4) / 1e4, Text: n.Words().String(),
		})
	}
	if r.Blank {
		a.Flags = append(a.Flags, evidence.Flag{
			ID: "prior-only", Round: evidence.WholeCase, Severity: evidence.Note,
			Text: say.Of("flag.prior-only"), Because: []say.Text{say.Of("because.prior-only")},
		}.Answer())
	}
	if beside != nil {
		a.Flags = append(a.Flags, evidence.Flag{
			ID: "second-fault", Round: evidence.WholeCase, Severity: evidence.Look, Text: beside.Words(), Because: beside.checks(),
		}.Answer())
	}
}

func told(reasons []Reason) []string {
	out := []string{}
	for _, r := range reasons {
		out = append(out, say.Of("reason.weighed", r.Words, r.Times()).String())
	}
	return out
}

// Times is the weight in words: how many times as likely, or as unlikely.
func (r Reason) Times() say.Text {
	f := r.Factor
	if f < 1 {
		f = 1 / f
	}
	if f < 9.5 {
		return say.Of("reason.times", f)
	}
	return say.Of("reason.times-whole", min(f, 999))
}

// Text is how it is done, and why it stands first; air isn't read as a hose is.
func (c Check) Text() say.Text {
	switch {
	case c.Point.Air():
		return say.Of("check.hose-point.air")
	case c.Again:
		return say.Sentences(say.Of("check.again"), c.how())
	}
	var why []say.Text
	if c.Proof {
		why = append(why, say.Of("check.proof"))
	}
	if len(c.Open) > 0 {
		why = append(why, say.Of("check.open", evidence.OutcomeTexts(c.Kind(), c.Open)))
	}
	return say.Sentences(append(why, c.how())...)
}

// how is how it is done on this car: a scan tool commands no fan that a belt turns, and nobody waits for
// one that can't come.
func (c Check) how() say.Text {
	switch {
	case c.Kind() == cases.FanTest && c.Fan == cases.ViscousFan:
		return say.Of("check.fan.viscous", evidence.ViscousTurns, evidence.ViscousBitesC, evidence.ViscousBittenC)
	case c.Kind() == cases.FanTest && c.Fan == cases.FixedFan:
		return say.Of("check.fan.fixed")
	case c.waitsForNoFan():
		return say.Of("check.hot-idle.no-fan")
	}
	return c.Check.Text()
}

// Title is the check's name.
func (c Check) Title() say.Text {
	switch {
	case c.Kind() == cases.FanTest && c.Fan.ByBelt():
		return say.Of("check.fan.belt-title")
	case c.waitsForNoFan():
		return say.Of("check.hot-idle.no-fan-title")
	}
	return c.Check.Title()
}

func (c Check) waitsForNoFan() bool {
	return c.Check.Check == likelihood.HotIdle && (c.Fan == cases.FixedFan || c.Fan == cases.NoFan)
}

// Words are what to do, with the engine's state that it needs and its caution.
func (c Check) Words() say.Text {
	return say.Sentences(say.Of("check.sentence", c.Heading()), c.Doing(), say.Of("check.maker-first"))
}

// Heading is the check's name, and which hose it is of.
func (c Check) Heading() say.Text {
	if c.Point != "" {
		return say.Of("check.at-point", c.Title(), say.Place(c.Point))
	}
	return c.Title()
}

// Doing is how it is done, with the engine's state that it needs and its caution.
func (c Check) Doing() say.Text {
	out := []say.Text{c.Text()}
	if needs := c.Needs.Text(); !needs.Empty() {
		out = append(out, say.Of("check.sentence", needs))
	}
	return say.Sentences(append(out, c.Caution())...)
}
