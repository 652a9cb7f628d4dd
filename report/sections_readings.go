package report

import (
	"sort"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// readings writes what the gun showed along the flow, and under the table why
// one of them doesn't count.
func (r *record) readings(i int) {
	readings, found := alongFlow(r.c.Rounds[i].Readings), r.found(i)
	if len(readings) == 0 {
		return
	}
	unit := ", " + string(r.say.Temperature)
	r.subheading("Readings", tableStart)
	var rows [][]cell
	var why []string
	for j, shown := range readings {
		last := j+1 == len(readings) || readings[j+1].Point != shown.Point
		got, judged := found.Readings[shown.Point]
		if !last || shown.ShownC == nil || !judged {
			rows = append(rows, cells(shown.Point.String(), r.shown(shown), surface(shown), "", "", notJudged(shown, last)))
			continue
		}
		rows = append(rows, r.reading(shown, got))
		if !got.Why.Empty() {
			why = append(why, shown.Point.String()+": "+r.say.by().Say(got.Why))
		}
	}
	r.table([]column{{"Point", 26}, {"Shown" + unit, 11}, {"On", 16}, {"Corrected" + unit, 15}, {"Expected" + unit, 13}, {"State", 19}}, rows)
	r.bullets(margin, why, softStyle)
}

func (r *record) shown(s cases.Reading) string {
	if s.ShownC == nil {
		return ""
	}
	return r.say.Temp(*s.ShownC)
}

func (r *record) reading(shown cases.Reading, got evidence.Reading) []cell {
	expected := ""
	if got.Expected != nil {
		expected = r.say.TempRange(got.Expected.LowC, got.Expected.HighC)
	}
	state, strong := r.state(got)
	return []cell{
		{shown.Point.String(), strong}, {text: r.shown(shown)}, {text: surface(shown)},
		{r.say.measured(got), strong}, {text: expected}, {state, strong},
	}
}

// state is how a reading stands, and whether it stands out.
func (r *record) state(got evidence.Reading) (string, bool) {
	switch {
	case got.Impossible || got.Doubtful:
		return "repeat", true // why stands under the table
	case got.State == evidence.Low && got.Expected != nil:
		return "▼ " + r.off(got.Expected.LowC.Minus(got.TrueC)) + " under", true
	case got.State == evidence.High && got.Expected != nil:
		return "▲ " + r.off(got.TrueC.Minus(got.Expected.HighC)) + " over", true
	}
	return stateWord(got.State), false
}

// off is how far a reading is out of its range.
func (r *record) off(k diagram.DeltaK) string {
	if k < 0.5 {
		return "just"
	}
	return r.say.Delta(k)
}

func stateWord(s evidence.State) string {
	switch s {
	case evidence.Low:
		return "▼ low"
	case evidence.High:
		return "▲ high"
	case evidence.InRange:
		return "in range"
	}
	return "not judged"
}

func notJudged(r cases.Reading, last bool) string {
	switch {
	case !last:
		return "taken again"
	case r.CantReach():
		return "can't reach"
	case r.ShownC == nil:
		return "no number"
	}
	return "not judged"
}

// surface is what was measured: air by a probe, all else by the gun.
func surface(r cases.Reading) string {
	switch {
	case r.Point.Air():
		return "air, probe"
	case r.CantReach():
		return ""
	case r.Surface.Word != "":
		return strings.ReplaceAll(r.Surface.Word, "-", " ")
	case r.Surface.Emissivity != 0:
		return "emissivity " + r.Surface.String()
	}
	return "not noted"
}

// alongFlow sorts readings by their points, those of one point as taken.
func alongFlow(readings []cases.Reading) []cases.Reading {
	place := map[diagram.Point]int{}
	for i, p := range diagram.Points() {
		place[p] = i
	}
	out := append([]cases.Reading(nil), readings...)
	sort.SliceStable(out, func(a, b int) bool { return place[out[a].Point] < place[out[b].Point] })
	return out
}
