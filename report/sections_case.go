package report

import (
	"strings"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

func (r *record) head() {
	r.paragraph("LOOPBOOK · TECHNICIAN'S RECORD", softStyle)
	r.y += 2
	r.paragraph(r.title(r.c), titleStyle)
	opened, id := moment(r.c.Opened), ""
	if opened != "" {
		opened = "Opened " + opened
	}
	if r.c.ID != "" {
		id = "Case " + r.c.ID
	}
	r.paragraph(join("  ·  ", opened, id, strings.Join(r.c.Tags, ", ")), softStyle)
	r.y += 6
}

// cautions stand in a box with a sign, above all else.
func (r *record) cautions() {
	const pad, indent, gap = 8, 22, 2
	width, height := r.inner()-2*pad-indent, 2*pad+strongStyle.lead()
	var texts [][]string
	for _, text := range Cautions(r.c) {
		lines := r.lines(text, width, smallStyle)
		texts = append(texts, lines)
		height += float64(len(lines))*smallStyle.lead() + gap
	}
	r.need(height)
	r.cautionBox(height)
	r.y += pad
	left := float64(margin + pad + indent)
	r.put(left, r.y, "Before anyone touches the loop", strongStyle)
	r.y += strongStyle.lead()
	for _, lines := range texts {
		r.y += gap
		r.flow(left, lines, smallStyle)
	}
	r.y += pad
}

func (r *record) cautionBox(height float64) {
	r.paint(margin, r.y, 1, drawing.Rect{
		Box: diagram.Box{0, 0, r.inner(), height}, Corner: 5,
		Fill: drawing.In(drawing.ActGround), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1,
	}, drawing.Wedge{
		Center: diagram.XY{16, 18}, Radius: 10, Toward: drawing.Up,
		Fill: drawing.In(drawing.ActSign), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1,
	}, drawing.Label{At: diagram.XY{16, 18.5}, Text: "!", Size: 12, Bold: true, Ink: drawing.In(drawing.Text), Align: drawing.Middle})
}

func (r *record) vehicle() {
	v := r.c.Vehicle
	var list facts
	list.add("Make and model", join(" ", v.Make, v.Model))
	list.add("Year", whole(v.Year))
	list.add("Engine", v.Engine)
	list.add("Driven by", v.Motive.Name())
	list.add("Identification", v.VIN)
	list.add("Odometer", r.say.distance(v.OdometerKm))
	list.add("Customer", r.c.Customer.Name)
	r.section("Vehicle", list, 2)
}

func (r *record) fitted() {
	l := r.c.Loop
	var list facts
	list.add("Layout", r.layoutName())
	list.add("Thermostat opens", r.say.temp(l.ThermostatOpensC))
	list.add("Fully open", r.say.temp(l.ThermostatFullC))
	list.add("Cap", r.say.pressure(l.CapKPa))
	list.add("Coolant", join(", ", l.Coolant.Base.Name(), number(l.Coolant.VolumePercent, "% by volume")))
	list.add("Capacity", number(l.CapacityL, "L"))
	list.add("Fan", l.Fan.Name())
	list.add("Air outside", r.say.temp(r.c.Site.AmbientC))
	list.add("Altitude", number(r.c.Site.AltitudeM, "m"))
	r.section("Loop as fitted", list, 2)
}

func (r *record) layoutName() string {
	if r.loop != nil {
		return r.loop.Title
	}
	return r.c.Loop.Layout
}

func (r *record) complaint() {
	text, symptoms := r.c.Complaint.Text, strings.Join(names(r.c.Complaint.Symptoms), ", ")
	if text == "" && symptoms == "" {
		r.blank = append(r.blank, "complaint")
		return
	}
	r.heading("Complaint", 2*bodyStyle.lead())
	if text != "" {
		r.paragraph(text, bodyStyle)
	}
	if symptoms != "" {
		r.paragraph("Symptoms: "+symptoms+".", bodyStyle)
	}
}

func (r *record) troubleCodes() {
	if len(r.c.Codes) == 0 {
		r.blank = append(r.blank, "trouble codes")
		return
	}
	r.heading("Trouble codes", tableStart)
	var rows [][]cell
	for _, code := range r.c.Codes {
		meaning := r.say.by().Say(r.codes.Meaning(code.Code))
		rows = append(rows, []cell{{code.Code, true}, {text: code.State}, {text: capital(meaning)}, {text: r.frozen(code.FreezeFrame)}})
	}
	r.table([]column{{"Code", 10}, {"State", 12}, {"Meaning", 46}, {"Freeze frame", 32}}, rows)
}

func (r *record) frozen(f cases.FreezeFrame) string {
	return join(", ", r.say.temp(f.EctC), number(f.RPM, "rpm"), r.say.speed(f.SpeedKmh))
}

// tableStart is what a table needs of a page to begin on it.
const tableStart = 50

// section writes facts under a heading, unless there are none.
func (r *record) section(name string, list facts, columns int) {
	if len(list) == 0 {
		r.blank = append(r.blank, strings.ToLower(name))
		return
	}
	r.heading(name, r.factsHeight(list[:min(len(list), 2*columns)], columns))
	r.facts(list, columns)
}

// blanks tells what nothing is noted for, so that a gap is seen to be one.
func (r *record) blanks() {
	if len(r.blank) == 0 {
		return
	}
	r.space(10)
	r.paragraph("Nothing is noted for: "+strings.Join(r.blank, ", ")+".", softStyle)
}
