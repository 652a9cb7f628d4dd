package report

import (
	"cmp"
	"slices"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// readings writes what the gun showed along the flow, and under the table why
// one of them doesn't count.
func (s *sheet) readings(i int) {
	readings, found := alongFlow(s.c.Rounds[i].Readings), s.f.Round(i)
	if len(readings) == 0 {
		return
	}
	unit := string(s.by.Units.Temperature)
	var rows [][]cell
	var why []string
	for j, shown := range readings {
		last := j+1 == len(readings) || readings[j+1].Point != shown.Point
		got, judged := found.Readings[shown.Point]
		if !last || shown.ShownC == nil || !judged {
			rows = append(rows, cells(s.by.Say(say.PointName(shown.Point)), s.bare(shown.ShownC), s.by.Say(surface(shown)), "", "", s.by.Say(notJudged(shown, last))))
			continue
		}
		rows = append(rows, s.reading(shown, got))
		if !got.Why.Empty() {
			why = append(why, s.by.Say(say.PointName(shown.Point))+": "+s.by.Say(got.Why))
		}
	}
	columns := []column{{s.by.Of("record.point"), 25}, {s.by.Of("record.shown", unit), 13}, {s.by.Of("record.on"), 17}, {s.by.Of("record.corrected", unit), 14}, {s.by.Of("record.expected-in", unit), 13}, {s.by.Of("record.state"), 18}}
	s.subheading(s.by.Of("record.readings"), s.tableKeep(columns, rows))
	s.table(columns, rows)
	s.bullets(margin, why, softStyle)
}

func (s *sheet) reading(shown cases.Reading, got evidence.Reading) []cell {
	state, strong := s.state(got)
	return []cell{
		{s.by.Say(say.PointName(shown.Point)), strong}, {text: s.bare(shown.ShownC)}, {text: s.by.Say(surface(shown))},
		{s.corrected(got), strong}, {text: s.between(got.Expected)}, {s.by.Say(state), strong},
	}
}

// corrected is a reading with how far it may be off.
func (s *sheet) corrected(r evidence.Reading) string {
	if r.UncertainK < 0.5 {
		return s.bare(&r.TrueC)
	}
	return s.by.Of("record.plus-minus", r.TrueC, r.UncertainK)
}

// state is how a reading stands, and whether it stands out.
func (s *sheet) state(got evidence.Reading) (say.Text, bool) {
	switch {
	case !got.Usable():
		return say.Of("record.repeat"), true // why stands under the table
	case got.State == evidence.Low && got.Expected != nil:
		return off(got.Expected.LowC.Minus(got.TrueC), say.Of("record.just-under"), "record.under"), true
	case got.State == evidence.High && got.Expected != nil:
		return off(got.TrueC.Minus(got.Expected.HighC), say.Of("record.just-over"), "record.over"), true
	}
	return stateWord(got.State), false
}

// off is how far a reading is out of its range.
func off(k diagram.DeltaK, just say.Text, key string) say.Text {
	if k < 0.5 {
		return just
	}
	return say.Of(key, k)
}

// deltaState says of a difference that is out by less than is written that it is just out: "20 K, up to 20 K, high"
// would read as wrong.
func deltaState(d evidence.Delta) say.Text {
	switch near := outBy(&d) < leastOut; {
	case near && d.State == evidence.Low:
		return say.Of("record.just-under")
	case near && d.State == evidence.High:
		return say.Of("record.just-over")
	}
	return stateWord(d.State)
}

func stateWord(s evidence.State) say.Text {
	switch s {
	case evidence.Low:
		return say.Of("record.low")
	case evidence.High:
		return say.Of("record.high")
	case evidence.InRange:
		return say.Of("record.in-range")
	}
	return say.Of("record.not-judged")
}

func notJudged(r cases.Reading, last bool) say.Text {
	switch {
	case !last:
		return say.Of("record.taken-again")
	case r.CantReach():
		return say.Of("record.cant-reach")
	case r.ShownC == nil:
		return say.Of("record.no-number")
	}
	return say.Of("record.not-judged")
}

// surface is what was measured: air by a probe, all else by the gun.
func surface(r cases.Reading) say.Text {
	switch {
	case r.Point.Air():
		return say.Of("record.air-probe")
	case r.CantReach():
		return say.Text{}
	case r.Surface == (cases.Surface{}):
		return say.Of("record.not-noted")
	}
	return r.Surface.Text()
}

// alongFlow sorts readings by their points, those of one point as taken.
func alongFlow(readings []cases.Reading) []cases.Reading {
	place := map[diagram.Point]int{}
	for i, p := range diagram.Points() {
		place[p] = i
	}
	out := append([]cases.Reading(nil), readings...)
	slices.SortStableFunc(out, func(a, b cases.Reading) int { return cmp.Compare(place[a.Point], place[b.Point]) })
	return out
}
