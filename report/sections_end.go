package report

import (
	"math"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// boiling is the hottest liquid of each side of the repair against the coolant under its cap.
func (s *sheet) boiling() {
	if len(s.f.Boiling) == 0 {
		return
	}
	columns := []column{{s.by.Of("record.stage"), 20}, {s.by.Of("record.boils"), 14}, {s.by.Of("record.hottest"), 52}, {s.by.Of("record.margin"), 14}}
	var rows [][]cell
	for _, b := range s.f.Boiling {
		rows = append(rows, cells(s.by.Say(b.Stage.Text()), s.by.Say(say.Value(b.PointC)), s.by.Of("record.hottest-where", b.HottestC, b.Where), s.by.Say(say.Value(b.MarginK))))
	}
	if len(rows) == 1 { // of what the rest of the paper is of
		columns, rows[0] = columns[1:], rows[0][1:]
	}
	s.heading(s.by.Of("record.boiling"), s.tableKeep(columns, rows))
	s.table(columns, rows)
}

// kept is what lies with the case and isn't printed, and what it taught.
func (s *sheet) kept() {
	var list facts
	for _, l := range s.c.Logs {
		list.add(say.Of("record.log-kept"), say.List(cases.LogTitle(l.Name), l.Stage.Text(), say.Of("record.samples", len(l.TimeS)), lasting(l.TimeS)))
	}
	if len(list) > 0 {
		s.section(say.Of("record.kept"), list, 1)
	}
	s.lesson()
}

func (s *sheet) lesson() {
	if s.c.Lesson != "" {
		s.heading(s.by.Of("record.lesson"), 3*bodyStyle.lead())
		s.note(s.c.Lesson)
	}
}

// lessonHeight is what a short lesson takes of a page, and the beginning of a long
// one.
func (s *sheet) lessonHeight() float64 {
	const most = 12 // lines
	if s.c.Lesson == "" {
		return 0
	}
	return headSpace + headStyle.lead() + headRule + min(s.linesHeight(bodyStyle, s.c.Lesson), most*bodyStyle.lead())
}

// lasting is how long a log is.
func lasting(timeS []float64) say.Text {
	if len(timeS) == 0 {
		return say.Text{}
	}
	minutes := math.Round((timeS[len(timeS)-1]-timeS[0])/6) / 10
	return say.Of("record.minutes", minutes)
}

// sources lists once where the expected ranges come from, by the class of the
// source.
func (s *sheet) sources() {
	var classes []evidence.Class
	rules := map[evidence.Class][]string{}
	add := func(source say.Text, class evidence.Class) {
		rule := s.by.Say(source)
		if class == evidence.Computed {
			rule = s.by.Of("record.source-model")
		}
		switch {
		case rule == "" || slices.Contains(rules[class], rule):
			return
		case rules[class] == nil:
			classes = append(classes, class)
		}
		rules[class] = append(rules[class], rule)
	}
	for i := range s.c.Rounds {
		for _, shown := range alongFlow(s.c.Rounds[i].Readings) {
			if got := s.f.Round(i).Readings[shown.Point]; got.Expected != nil {
				add(got.Expected.Source, got.Expected.Class)
			}
		}
	}
	for _, d := range s.f.Deltas {
		add(d.Source, d.Class)
	}
	if classes == nil {
		return
	}
	var list []string
	for _, class := range classes {
		list = append(list, s.by.Of("capital", say.Of("record.source", class.Text(), strings.Join(rules[class], "; "))))
	}
	are := s.by.Of("record.sources-are")
	s.heading(s.by.Of("record.sources"), s.keepClosing(s.linesHeight(smallStyle, append([]string{are}, list...)...), 3*smallStyle.lead()))
	s.paragraph(are, smallStyle)
	s.bullets(margin, list, smallStyle)
}

// keepClosing is what a section of a height keeps of its page, so that the
// signatures don't stand on the last one alone: all down to them where that isn't
// too much to move, or its beginning.
func (s *sheet) keepClosing(height, beginning float64) float64 {
	const most = 0.5 // of a page
	whole := height + s.blanksHeight() + headSpace + headStyle.lead() + headRule + s.signedHeight()
	if whole > most*(s.bottom()-margin) {
		return beginning
	}
	return whole
}

// signRoom is the height to sign in.
const signRoom = 30

// signedHeight is what the signatures take under their heading.
func (s *sheet) signedHeight() float64 {
	return s.linesHeight(smallStyle, s.caseState()...) + signRoom + softStyle.lead() + 4
}

// caseState is which state of the case the record is of, in lines.
func (s *sheet) caseState() []string {
	var out []string
	if s.m.Revision > 0 {
		out = append(out, s.by.Of("record.revision", s.m.Revision))
	}
	if s.m.Hash != "" {
		out = append(out, s.by.Of("record.hash", s.m.Hash))
	}
	return out
}

// signatures close the record: which state of the case it is, and who stands for
// it.
func (s *sheet) signatures() {
	const gap = 24
	s.heading(s.by.Of("record.signed"), s.signedHeight())
	for _, text := range s.caseState() {
		s.paragraph(text, smallStyle)
	}
	s.y += signRoom
	width := (s.inner() - gap) / 2
	for i, who := range []say.Text{say.Of("record.technician"), say.Of("record.customer-signs")} {
		x := margin + float64(i)*(width+gap)
		s.rule(x, s.y, width, drawing.PartLine)
		s.put(x, s.y+2, s.by.Say(who), softStyle)
	}
	s.y += softStyle.lead() + 4
}
