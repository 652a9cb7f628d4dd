// Package proof holds what was measured after a repair against what was
// measured before it, condition by condition, and says whether the repair is
// shown to have worked.
//
// Only the stage says what is before and what after. A round is paired with one
// of the same condition or with none: differences between unlike conditions
// prove nothing.
package proof

import (
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// Proof is a case's repair, held against the time before it.
type Proof struct {
	Measured    bool    // anything was measured after the repair
	Healthy     float64 // how probable the loop is healthy now; without measurements the prior
	Verdict     Verdict
	Sentence    say.Text    // the verdict
	Left        cases.Cause // the likeliest fault where the chances say that it isn't fixed; "": none
	Pairs       []Pair
	Lone        []Lone // rounds of either stage without their like
	Logs        []LogPair
	Tests       []TestPair
	Codes       Codes
	Unexplained []evidence.Flag // what still stands out after the repair
	Off         []Off           // points out of their range after the repair
	Again       []int           // rounds before the repair that are to be walked again
	Repeat      []say.Text      // what is to be measured to be sure
	Mute        bool            // what was measured tells nothing of the repaired fault
	Telling     cases.TestKind  // the check that would tell of it then, besides those owed; "": none
}

// Verdict is what the measurements after the repair come to.
type Verdict string

// The verdicts.
const (
	NotMeasured Verdict = "not-measured"
	NoRepair    Verdict = "no-repair" // the loop was found sound, and nothing was done to it
	NotFixed    Verdict = "not-fixed"
	NotShown    Verdict = "not-shown" // neither fixed nor not
	Fixed       Verdict = "fixed"
)

// Judge holds the stages of a case against each other. The findings are the
// case's; the ranking is of the stage after the repair, by the usual prior, in
// place of which what is known of repairs is put. Without a crowd in it
// temperatures count by the trade's rules alone.
func Judge(c *cases.Case, f evidence.Findings, after diagnosis.Ranking) Proof {
	after = after.Repaired(c.Verdict.Cause)
	healthy, _ := after.Of(cases.Healthy)
	p := Proof{Measured: diagnosis.MeasuredAfter(c), Healthy: healthy.Probability}
	p.Pairs, p.Lone = pairRounds(c, f)
	p.Again = walkAgain(c, f, p.Pairs)
	p.Logs = pairLogs(c, f)
	p.Tests = PairTests(c)
	p.Codes = compareCodes(c)
	p.Unexplained = unexplained(c, f)
	p.Off = offAfter(c, f)
	p.Mute = p.mute(c, f, after)
	p.Verdict = p.judge(c)
	if p.Mute && p.Verdict == NotShown { // else something else is wrong, which comes first
		p.Telling = p.telling(c.Verdict.Cause, after)
	}
	if p.Verdict == NotFixed && p.Healthy < brokenFrom {
		p.Left = worst(after).Cause
	}
	p.Sentence = p.say(c, after)
	if p.Verdict == NoRepair {
		p.Again = nil
		return p
	}
	p.Repeat = p.repeat(c)
	return p
}

// Pending is the proof while its cars are still being computed: it asks for what is to be done again whatever they will
// show, so that nothing that stands there gives way when they do.
func (p Proof) Pending(c *cases.Case) Proof {
	if p.Verdict != NoRepair {
		p.Off, p.Telling, p.Mute = nil, "", false
		p.Repeat = p.repeat(c)
	}
	return p
}

func isAfter(s cases.Stage) bool { return s == cases.AfterRepair }

// unexplained are the findings after the repair that ask for something.
func unexplained(c *cases.Case, f evidence.Findings) []evidence.Flag {
	var out []evidence.Flag
	for _, flag := range f.Flags {
		after := isAfter(flag.Stage)
		if flag.Round >= 0 && flag.Round < len(c.Rounds) {
			after = isAfter(c.Rounds[flag.Round].Stage)
		}
		if after && flag.Severity != evidence.Note {
			out = append(out, flag)
		}
	}
	return out
}

// A loop counts as shown to be healthy from this chance on, which is more than a
// repair comes to unmeasured, and as not mended below the other (judgement):
// between them more has to be measured.
const (
	shownFrom  = 0.85
	brokenFrom = 0.3
)

func (p *Proof) judge(c *cases.Case) Verdict {
	act := 0
	for _, f := range p.Unexplained {
		if f.Severity == evidence.Act {
			act++
		}
	}
	switch {
	case !p.Measured && c.Verdict.Cause == cases.Healthy && len(c.Repair.Parts) == 0:
		return NoRepair
	case !p.Measured:
		return NotMeasured
	case p.Healthy < brokenFrom, act > 0 && p.Healthy < shownFrom:
		return NotFixed
	case p.Healthy >= shownFrom && !p.Mute && len(p.Unexplained) == 0 && len(p.Codes.Back) == 0 && len(p.Owed()) == 0 && p.places(Unexplained) == nil:
		return Fixed
	}
	return NotShown
}

// Owed are the checks that failed before the repair and weren't repeated after it:
// temperatures can't vouch for what they don't show.
func (p *Proof) Owed() []TestPair {
	var out []TestPair
	for _, t := range p.Tests {
		if t.After < 0 && !diagnosis.OfOldPart(t.Kind) && !evidence.Passed(t.BeforeOutcome) {
			out = append(out, t)
		}
	}
	return out
}

// say is the verdict in words, with what is likeliest where it isn't health.
func (p *Proof) say(c *cases.Case, after diagnosis.Ranking) say.Text {
	sure := diagnosis.Chance(p.Healthy)
	switch p.Verdict {
	case NotMeasured:
		return say.Of("proof.not-measured")
	case NoRepair:
		return say.Of("proof.no-repair")
	case Fixed:
		return say.Sentences(append([]say.Text{say.Of("proof.fixed", sure)}, p.harmless()...)...)
	case NotShown:
		if p.Mute {
			return say.Of("proof.mute", c.Verdict.Cause.Text())
		}
		return say.Of("proof.not-shown", sure)
	}
	if p.Healthy >= brokenFrom { // it isn't the chances that say so
		return say.Of("proof.not-fixed-found", p.gravest().Text)
	}
	worst := worst(after)
	if worst.Cause == c.Verdict.Cause {
		return say.Of("proof.not-fixed-same", sure, worst.Cause.Text(), diagnosis.Chance(worst.Probability))
	}
	return say.Of("proof.not-fixed", sure, worst.Cause.Text(), diagnosis.Chance(worst.Probability))
}

// gravest is the first finding to act on.
func (p *Proof) gravest() evidence.Flag {
	i := slices.IndexFunc(p.Unexplained, func(f evidence.Flag) bool { return f.Severity == evidence.Act })
	return p.Unexplained[i]
}

// worst is the likeliest fault of a ranking.
func worst(r diagnosis.Ranking) diagnosis.Ranked {
	for _, c := range r.Causes {
		if c.Cause != cases.Healthy {
			return c
		}
	}
	return diagnosis.Ranked{}
}

// repeat is what has to be measured to be sure, the heaviest first.
func (p *Proof) repeat(c *cases.Case) []say.Text {
	var out []say.Text
	if at := p.places(Unexplained); at != nil && p.Verdict != NotFixed { // what is still wrong explains them
		out = append(out, say.Of("proof.repeat.off", say.List(at...)))
	}
	for _, i := range p.Again {
		out = append(out, say.Of("proof.repeat.round", roundName(c, i)))
	}
	if slices.ContainsFunc(p.Logs, func(l LogPair) bool { return l.After < 0 }) {
		out = append(out, say.Of("proof.repeat.log"))
	}
	for _, t := range p.Owed() {
		out = append(out, say.Of("proof.repeat.test", t.Kind.Text()))
	}
	switch {
	case p.Telling != "":
		out = append(out, say.Of("proof.repeat.telling", p.Telling.Text()))
	case p.Mute && p.Verdict == NotShown && len(out) == 0:
		out = append(out, say.Of("proof.repeat.mute"))
	}
	if len(c.Codes) > 0 && !p.Codes.Read {
		out = append(out, say.Of("proof.repeat.codes"))
	}
	return out
}

// roundName is a round's label, or its number where it has none.
func roundName(c *cases.Case, i int) say.Text {
	if l := c.Rounds[i].Title(); !l.Empty() {
		return l
	}
	return say.Of("proof.round", i+1)
}
