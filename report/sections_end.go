package report

import (
	"math"
	"strconv"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

func (r *record) verdict() {
	v := r.c.Verdict
	var list facts
	list.add("Cause", v.Cause.Name())
	list.add("Confirmed by", cases.TestKind(v.ConfirmedBy).Name())
	if len(list) == 0 && v.Note == "" {
		r.blank = append(r.blank, "verdict")
		return
	}
	r.heading("Verdict", 2*bodyStyle.lead())
	r.facts(list, 1)
	r.note(v.Note)
}

// note writes a free text, if there is one.
func (r *record) note(text string) {
	if text != "" {
		r.paragraph(text, bodyStyle)
	}
}

func (r *record) repair() {
	rep := r.c.Repair
	var list facts
	list.add("Labour", number(rep.LabourHours, "h"))
	if len(rep.Parts) == 0 && len(list) == 0 && rep.AccessNote == "" {
		r.blank = append(r.blank, "repair")
		return
	}
	r.heading("Repair", tableStart)
	var rows [][]cell
	for _, part := range rep.Parts {
		rows = append(rows, cells(part.Name, number(part.Quantity, ""), price(part.Price)))
	}
	r.table([]column{{"Part", 6}, {"Quantity", 1}, {"Price", 1}}, rows)
	r.facts(list, 1)
	if rep.AccessNote != "" {
		r.note("Access: " + rep.AccessNote)
	}
}

// price has no currency: the case doesn't know it.
func price(v *float64) string {
	if v == nil {
		return ""
	}
	return strconv.FormatFloat(*v, 'f', 2, 64)
}

// boiling is the hottest liquid of the case against the coolant under its cap.
func (r *record) boiling() {
	b := r.f.Boiling
	if b == nil {
		return
	}
	var list facts
	list.add("Boils at", r.say.TempUnit(b.PointC))
	list.add("Hottest seen", r.say.TempUnit(b.HottestC))
	list.add("Margin", r.say.Delta(b.MarginK))
	r.section("Boiling margin", list, 3)
}

// kept is what lies with the case and isn't printed, and what it taught.
func (r *record) kept() {
	var list facts
	for _, l := range r.c.Logs {
		list.add("Log", join(", ", l.Name, l.Stage.Name(), count(len(l.TimeS), "sample"), lasting(l.TimeS)))
	}
	for _, p := range r.c.Photos {
		list.add("Photo", join(", ", p.File, p.Point.String(), p.Caption))
	}
	if len(list) > 0 {
		r.section("Kept with the case", list, 1)
	}
	if r.c.Lesson != "" {
		r.heading("Lesson", 2*bodyStyle.lead())
		r.note(r.c.Lesson)
	}
}

// lasting is how long a log is.
func lasting(timeS []float64) string {
	if len(timeS) == 0 {
		return ""
	}
	minutes := math.Round((timeS[len(timeS)-1]-timeS[0])/6) / 10
	return number(&minutes, "min")
}

// sources lists once where each expected range comes from.
func (r *record) sources() {
	var list []string
	seen := map[string]bool{}
	add := func(source say.Text, class evidence.Class) {
		line := join(" — ", r.say.by().Say(source), r.say.by().Say(class.Text()))
		if line != "" && !seen[line] {
			seen[line] = true
			list = append(list, capital(line))
		}
	}
	for i := range r.c.Rounds {
		for _, shown := range alongFlow(r.c.Rounds[i].Readings) {
			if got := r.found(i).Readings[shown.Point]; got.Expected != nil {
				add(got.Expected.Source, got.Expected.Class)
			}
		}
	}
	for _, d := range r.f.Deltas {
		add(d.Source, d.Class)
	}
	if list == nil {
		return
	}
	r.heading("Where the expected ranges come from", 3*smallStyle.lead())
	r.paragraph("What a loop like this one would show in good order, here and now. "+strings.TrimSpace(classes), smallStyle)
	r.bullets(margin, list, smallStyle)
}

// classes explains the classes of evidence's sources.
const classes = "“Published” has a document behind it, “common practice” is the trade's custom without one, “from memory” nobody has checked."
