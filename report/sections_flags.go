package report

import (
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// flags writes what stands out in a round, the gravest first.
func (r *record) flags(round int) {
	list := r.flagsOf(round)
	if len(list) == 0 {
		return
	}
	r.subheading("What stands out", 3*bodyStyle.lead())
	for _, f := range list {
		r.flag(f)
	}
}

// wholeCase writes what stands out in the case as a whole.
func (r *record) wholeCase() {
	list := r.flagsOf(evidence.WholeCase)
	if len(list) == 0 {
		return
	}
	r.heading("The case as a whole", 3*bodyStyle.lead())
	for _, f := range list {
		r.flag(f)
	}
}

func (r *record) flagsOf(round int) []evidence.Flag {
	var out []evidence.Flag
	for _, f := range r.f.Flags {
		if f.Round == round {
			out = append(out, f)
		}
	}
	return out
}

// flag is a sign, a word and a sentence, with the reasons under them.
func (r *record) flag(f evidence.Flag) {
	const indent, wordWidth = 18, 32
	text := r.lines(r.say.by().Say(f.Text), r.inner()-indent-wordWidth, strongStyle)
	r.space(2)
	r.need(float64(min(len(text)+1, 6)) * strongStyle.lead())
	word, sign := severity(f.Severity)
	r.paint(margin+2, r.y, 1, sign)
	r.put(margin+indent, r.y, word, strongStyle)
	r.flow(margin+indent+wordWidth, text, strongStyle)
	r.bullets(margin+indent+wordWidth, r.say.by().All(f.Because), smallStyle)
}

// severity is the word and the sign of a severity: each has its own shape.
func severity(s evidence.Severity) (string, drawing.Shape) {
	switch s {
	case evidence.Act:
		return "Act", drawing.Wedge{Center: diagram.XY{6, 7.5}, Radius: 6, Toward: drawing.Up, Fill: drawing.In(drawing.ActSign), Stroke: drawing.In(drawing.ActText), StrokeWidth: 0.8}
	case evidence.Look:
		return "Look", drawing.Rhomb{Center: diagram.XY{6, 6}, Radius: 5.5, Fill: drawing.In(drawing.LookSign), Stroke: drawing.In(drawing.LookText), StrokeWidth: 0.8}
	}
	return "Note", drawing.Disc{Center: diagram.XY{6, 6}, Radius: 4.5, Fill: drawing.In(drawing.NoteSign), Stroke: drawing.In(drawing.NoteText), StrokeWidth: 0.8}
}
