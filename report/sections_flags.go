package report

import (
	"slices"

	"loopbook/cases/evidence"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// flags writes what stands out in a round, the gravest first.
func (s *sheet) flags(round int) {
	s.flagList(s.flagsOf(round), say.Of("record.stands-out"), s.subheading)
}

// wholeCase writes what stands out in the case as a whole, but for what belongs
// to one test: that stands under it.
func (s *sheet) wholeCase() {
	list := slices.DeleteFunc(s.flagsOf(evidence.WholeCase), s.ofTest)
	s.flagList(list, say.Of("record.whole"), s.heading)
}

// ofTest reports whether a test of the case says the same.
func (s *sheet) ofTest(f evidence.Flag) bool {
	same := func(own evidence.Flag) bool { return own.ID == f.ID && s.by.Say(own.Text) == s.by.Say(f.Text) }
	return slices.ContainsFunc(s.check, func(c evidence.Check) bool { return slices.ContainsFunc(c.Flags, same) })
}

func (s *sheet) flagList(list []evidence.Flag, title say.Text, head func(string, float64)) {
	if len(list) == 0 {
		return
	}
	head(s.by.Say(title), s.flagKeep(list[0]))
	for _, f := range list {
		s.flag(f)
	}
}

func (s *sheet) flagsOf(round int) []evidence.Flag {
	var out []evidence.Flag
	for _, f := range s.f.Flags {
		if f.Round == round {
			out = append(out, f)
		}
	}
	return out
}

// flag is a sign, a word and a sentence, with the reasons under them.
func (s *sheet) flag(f evidence.Flag) {
	word, sign := severity(f)
	left := s.flagLeft(word)
	s.need(s.flagKeep(f))
	s.space(flagSpace)
	s.paint(margin+2, s.y, 1, sign)
	s.put(margin+flagIndent, s.y, s.by.Say(word), strongStyle)
	s.flow(left, s.lines(s.by.Say(f.Text), s.width-margin-left, strongStyle), strongStyle)
	s.bullets(left, s.by.All(f.Because), smallStyle)
}

const (
	flagSpace  = 2  // over a flag
	flagIndent = 18 // of its word, beside the sign
)

// flagLeft is where a flag's sentence begins, after its word.
func (s *sheet) flagLeft(word say.Text) float64 {
	const gap = 7
	return margin + flagIndent + s.measure(s.by.Say(word), strongStyle) + gap
}

// flagKeep is what a flag keeps of its page: all of a short one, and the beginning
// of a long one.
func (s *sheet) flagKeep(f evidence.Flag) float64 {
	const most = 8 // lines
	word, _ := severity(f)
	width := s.width - margin - s.flagLeft(word)
	n := len(s.lines(s.by.Say(f.Text), width, strongStyle))
	for _, b := range s.by.All(f.Because) {
		n += len(s.lines(b, width-bulletIndent, smallStyle))
	}
	return flagSpace + float64(min(n, most))*strongStyle.lead()
}

// severity is the word and the sign of a flag.
func severity(f evidence.Flag) (say.Text, drawing.Shape) {
	switch {
	case f.Caution():
		return say.Of("record.caution"), signAct()
	case f.Severity == evidence.Act:
		return say.Of("record.act"), signAct()
	case f.Severity == evidence.Look:
		return say.Of("record.look"), signLook()
	}
	return say.Of("record.note"), signNote()
}
