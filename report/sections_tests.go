package report

import (
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

func (s *sheet) tests() {
	if len(s.c.Tests) == 0 {
		s.none(say.Of("record.tests"))
		return
	}
	for i := range s.c.Tests {
		t := &s.c.Tests[i]
		list := measured(t)
		keep := s.factsHeight(list, 2) + s.firstHeight(t) + s.factsHeight(sums(s.check[i]), 2)
		if i == 0 {
			s.heading(s.by.Of("record.tests"), subStyle.lead()+10+keep)
		}
		s.subheading(s.by.Say(testName(t)), keep)
		s.test(t, list)
		s.worked(s.check[i])
	}
}

// firstHeight is what a test's values go with, by what comes first: a face, a
// table, a curve.
func (s *sheet) firstHeight(t *cases.Test) float64 {
	_, curved := picture.Test(t, s.by)
	switch {
	case len(t.ShownC) > 0:
		return s.faceHeight(t)
	case len(t.Points)+len(t.Reference) > 0:
		return tableStart
	case curved:
		return curveHeight
	}
	return smallStyle.lead()
}

func testName(t *cases.Test) say.Text {
	return say.List(say.Of("capital", t.Kind.Text()), t.Stage.Text())
}

func (s *sheet) test(t *cases.Test, list facts) {
	switch {
	case len(list) > 0:
		s.facts(list, 2)
	case len(t.Points) == 0 && len(t.Reference) == 0 && len(t.ShownC) == 0:
		s.paragraph(s.by.Of("record.no-values"), softStyle)
	}
	s.bench(t)
	s.curve(t)
	s.face(t)
}

// worked is what a test comes to: its sums and what stands out in it.
func (s *sheet) worked(check evidence.Check) {
	list := sums(check)
	s.need(s.factsHeight(list, 2))
	s.facts(list, 2)
	for _, f := range check.Flags {
		s.flag(f)
	}
}

func sums(check evidence.Check) facts {
	var list facts
	for _, sum := range check.Sums {
		list.add(sum.Name, sum.Value)
	}
	return list
}

// curve is a test's numbers as a curve, where that says more than they do.
func (s *sheet) curve(t *cases.Test) {
	if lines, ok := picture.Test(t, s.by); ok {
		s.plot(lines, 0.7, curveHeight)
	}
}

const curveHeight = 130

// plot draws a chart over a share of the page's width. What holds nothing is left
// out.
func (s *sheet) plot(c chart.Chart, share, height float64) {
	s.space(bodyStyle.lead() / 2)
	s.need(height)
	_ = s.place(c, share, height)
}

// measured are the single values of a test, whichever its kind uses.
func measured(t *cases.Test) facts {
	var list facts
	list.add(say.Of("record.start-pressure"), whole(t.StartKPa))
	list.add(say.Of("record.end-pressure"), whole(t.EndKPa))
	list.add(say.Of("record.held"), quantity("record.minutes", t.Minutes))
	list.add(say.Of("record.start-temperature"), temp(t.StartC))
	list.add(say.Of("record.end-temperature"), temp(t.EndC))
	list.add(say.Of("record.cap-rated"), whole(t.RatedKPa))
	list.add(say.Of("record.cap-opens"), whole(t.OpensKPa))
	list.add(say.Of("record.cap-holds"), yesNo(t.Holds))
	list.add(say.Of("record.vacuum-valve"), yes(t.VacuumValveOK, say.Of("record.works"), say.Of("record.works-not")))
	list.add(say.Of("record.result"), t.Result.Text())
	list.add(say.Of("record.freezes"), temp(t.FreezeC))
	list.add(say.Of("record.strength"), quantity("record.by-volume", t.VolumePercent))
	list.add(say.Of("record.ph"), quantity("value.tenth", t.PH))
	list.add(say.Of("record.stray"), quantity("record.volts", t.StrayV))
	list.add(say.Of("record.looks"), t.Looks.Text())
	list.add(say.Of("record.rated-opens"), temp(t.RatedOpensC))
	list.add(say.Of("record.rated-full"), temp(t.RatedFullC))
	list.add(say.Of("record.rated-lift"), quantity("record.mm", t.RatedLiftMM))
	list.add(say.Of("record.commanded"), yesNo(t.Commanded))
	list.add(say.Of("record.runs"), yesNo(t.Runs))
	list.add(say.Of("record.fan-starts"), temp(t.StartsC))
	list.add(say.Of("record.level"), t.State.Text())
	list.add(say.Of("record.belt"), yes(t.BeltOK, say.Of("record.sound"), say.Of("record.sound-not")))
	list.add(say.Of("record.play"), yesNo(t.Play))
	list.add(say.Of("record.weeps"), yesNo(t.Weep))
	list.add(say.Of("record.lower-hose"), yes(t.LowerCollapses, say.Of("record.collapses"), say.Of("record.keeps-shape")))
	list.add(say.Of("record.bubbles"), yes(t.Seen, say.Of("record.seen"), say.Of("record.seen-none")))
	list.add(say.Of("record.flow"), t.Flows.Text())
	return list
}

// bench writes the lines of a thermostat's or a sensor's record.
func (s *sheet) bench(t *cases.Test) {
	unit := string(s.by.Units.Temperature)
	heats := cases.WayUp(t.Points)
	var lift, ohm [][]cell
	for _, b := range t.Points {
		if b.WaterC != nil || b.LiftMM != nil {
			way := "record.cooling"
			if heats(b) {
				way = "record.heating"
			}
			lift = append(lift, cells(s.bare(b.WaterC), s.decimal(b.LiftMM), s.by.Of(way)))
		}
		if b.TempC != nil || b.Ohm != nil {
			ohm = append(ohm, cells(s.bare(b.TempC), s.decimal(b.Ohm), s.by.Of("record.measured")))
		}
	}
	for _, b := range t.Reference {
		ohm = append(ohm, cells(s.bare(b.TempC), s.decimal(b.Ohm), s.by.Of("record.reference")))
	}
	s.table([]column{{s.by.Of("record.water", unit), 1}, {s.by.Of("record.lift"), 1}, {s.by.Of("record.way"), 2}}, lift)
	s.table([]column{{s.by.Of("record.temperature", unit), 1}, {s.by.Of("record.resistance"), 1}, {s.by.Of("record.which"), 2}}, ohm)
}

// faceRow is the height of a row of a core's heat map.
const faceRow = 22

// face is a core's scan as a heat map with its numbers.
func (s *sheet) face(t *cases.Test) {
	if face, ok := picture.FaceScan(t, s.by); ok {
		if s.unjudged {
			face = face.Unframed()
		}
		s.plot(face, 0.7, s.faceHeight(t))
	}
}

func (s *sheet) faceHeight(t *cases.Test) float64 {
	return min(float64(len(t.ShownC)+1)*faceRow, s.mostDrawn())
}
