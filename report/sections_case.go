package report

import (
	"strings"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

func (s *sheet) head(kind say.Text) {
	s.paragraph(s.by.Say(kind), softStyle)
	s.y += 2
	s.paragraph(s.by.Say(title(s.c)), titleStyle)
	opened, id := moment(s.c.Opened), ""
	if opened != "" {
		opened = s.by.Of("record.opened", opened)
	}
	if s.c.ID != "" {
		id = s.by.Say(caseName(s.c))
	}
	s.paragraph(join("  ·  ", opened, id, strings.Join(s.c.Tags, ", ")), softStyle)
	s.y += 6
}

// cautions stand in a box with a sign, above all else.
func (s *sheet) cautions() {
	const pad, indent, gap = 8, 22, 2
	width, height := s.inner()-2*pad-indent, 2*pad+strongStyle.lead()
	var texts [][]string
	for _, text := range Cautions(s.c) {
		lines := s.lines(s.by.Say(text), width, smallStyle)
		texts = append(texts, lines)
		height += float64(len(lines))*smallStyle.lead() + gap
	}
	s.need(height)
	s.cautionBox(height)
	s.y += pad
	left := float64(margin + pad + indent)
	s.put(left, s.y, s.by.Of("record.before-touching"), strongStyle)
	s.y += strongStyle.lead()
	for _, lines := range texts {
		s.y += gap
		s.flow(left, lines, smallStyle)
	}
	s.y += pad
}

func (s *sheet) cautionBox(height float64) {
	s.paint(margin, s.y, 1, drawing.Rect{
		Box: diagram.Box{0, 0, s.inner(), height}, Corner: 5,
		Fill: drawing.In(drawing.ActGround), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1,
	}, drawing.Wedge{
		Center: diagram.XY{16, 18}, Radius: 10, Toward: drawing.Up,
		Fill: drawing.In(drawing.ActSign), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1,
	}, drawing.Label{At: diagram.XY{16, 18.5}, Text: "!", Size: 12, Bold: true, Ink: drawing.In(drawing.Text), Align: drawing.Middle})
}

func (s *sheet) vehicle() {
	v := s.c.Vehicle
	list := s.vehicleFacts()
	list.note(say.Of("record.identification"), v.VIN)
	list.add(say.Of("record.odometer"), distance(v.OdometerKm))
	list.note(say.Of("record.customer"), join(" · ", s.c.Customer.Name, s.c.Customer.Contact))
	s.section(say.Of("record.vehicle"), list, 2)
}

// vehicleFacts are what is no secret of the vehicle.
func (s *sheet) vehicleFacts() facts {
	v := s.c.Vehicle
	var list facts
	list.note(say.Of("record.make-model"), join(" ", v.Make, v.Model))
	list.add(say.Of("record.year"), whole(v.Year))
	list.note(say.Of("record.engine"), v.Engine)
	list.add(say.Of("record.driven-by"), v.Motive.Text())
	return list
}

func (s *sheet) fitted() {
	l := s.c.Loop
	var list facts
	list.add(say.Of("record.layout"), s.layoutName())
	list.add(say.Of("record.thermostat-opens"), temp(l.ThermostatOpensC))
	list.add(say.Of("record.thermostat-full"), temp(l.ThermostatFullC))
	list.add(say.Of("record.cap"), whole(l.CapKPa))
	list.add(say.Of("record.coolant"), say.List(l.Coolant.Base.Text(), quantity("record.by-volume", l.Coolant.VolumePercent)))
	list.add(say.Of("record.capacity"), litres(l.CapacityL))
	list.add(say.Of("record.fan"), l.Fan.Text())
	list.add(say.Of("record.outside"), temp(s.c.Site.AmbientC))
	list.add(say.Of("record.altitude"), whole(s.c.Site.AltitudeM))
	s.section(say.Of("record.fitted"), list, 2)
}

func (s *sheet) layoutName() say.Text {
	switch {
	case s.loop != nil:
		return say.LoopName(s.loop)
	case s.c.Loop.Layout != "":
		return say.Own(s.c.Loop.Layout)
	}
	return say.Text{}
}

func (s *sheet) complaint() {
	text, symptoms := s.c.Complaint.Text, say.List(texts(s.c.Complaint.Symptoms)...)
	if text == "" && symptoms.Empty() {
		s.none(say.Of("record.complaint"))
		return
	}
	s.heading(s.by.Of("record.complaint"), 3*bodyStyle.lead())
	s.note(text)
	if !symptoms.Empty() {
		s.paragraph(s.by.Of("record.symptoms", symptoms), bodyStyle)
	}
}

// note writes a free text, if there is one.
func (s *sheet) note(text string) {
	if text != "" {
		s.paragraph(text, bodyStyle)
	}
}

// troubleCodes keeps what follows the table with it.
func (s *sheet) troubleCodes(follows float64) {
	if len(s.c.Codes) == 0 {
		s.none(say.Of("record.codes"))
		return
	}
	var rows [][]cell
	for _, code := range s.c.Codes {
		rows = append(rows, []cell{{code.Code, true}, {text: s.by.Say(code.StateText())}, {text: s.by.Of("capital", s.codes.Meaning(code.Code))}, {text: s.by.Say(frozen(code.FreezeFrame))}})
	}
	columns := []column{{s.by.Of("record.code"), 10}, {s.by.Of("record.state"), 12}, {s.by.Of("record.meaning"), 46}, {s.by.Of("record.freeze-frame"), 32}}
	s.heading(s.by.Of("record.codes"), s.tableKeep(columns, rows)+follows)
	s.table(columns, rows)
}

func frozen(f cases.FreezeFrame) say.Text {
	return say.List(temp(f.EctC), quantity("record.rpm", f.RPM), speed(f.SpeedKmh))
}

// tableStart is what a table needs of a page to begin on it.
const tableStart = 50

// blanks tells what nothing is noted for, so that a gap is seen to be one.
func (s *sheet) blanks() {
	if len(s.blank) == 0 {
		return
	}
	s.need(s.keepClosing(0, 0))
	s.space(blanksSpace)
	s.paragraph(s.nothingFor(), softStyle)
}

// blanksSpace is the room over what nothing is noted for.
const blanksSpace = 10

func (s *sheet) nothingFor() string {
	return s.by.Of("record.nothing-for", say.List(s.blank...))
}

// blanksHeight is what blanks takes of a page.
func (s *sheet) blanksHeight() float64 {
	if len(s.blank) == 0 {
		return 0
	}
	return blanksSpace + s.linesHeight(softStyle, s.nothingFor())
}
