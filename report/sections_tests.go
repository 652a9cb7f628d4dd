package report

import (
	"fmt"
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

func (r *record) tests() {
	if len(r.c.Tests) == 0 {
		r.blank = append(r.blank, "tests")
		return
	}
	for i := range r.c.Tests {
		t := &r.c.Tests[i]
		list := r.measured(t)
		keep := r.factsHeight(list[:min(len(list), 4)], 2)
		if len(list) == 0 {
			keep = tableStart // a table or a sentence comes first
		}
		if i == 0 {
			r.heading("Tests", subStyle.lead()+10+keep)
		}
		r.subheading(join(", ", capital(t.Kind.Name()), t.Stage.Name()), keep)
		r.test(t, list)
	}
}

func (r *record) test(t *cases.Test, list facts) {
	switch {
	case len(list) > 0:
		r.facts(list, 2)
	case len(t.Points) == 0 && len(t.Reference) == 0 && len(t.ShownC) == 0:
		r.paragraph("No values are noted.", softStyle)
	}
	r.bench(t)
	r.curve(t)
	r.face(t.ShownC)
}

// curve is a test's numbers as a curve, where that says more than they do.
func (r *record) curve(t *cases.Test) {
	lines, ok := picture.Test(t, r.by)
	if !ok {
		return
	}
	const height = 130
	r.space(bodyStyle.lead())
	r.need(height)
	if err := lines.OnPage(r.pdf, chart.Plain(), family, margin, r.y, r.inner()*0.7, height); err == nil {
		r.y += height
	}
}

// measured are the single values of a test, whichever its kind uses.
func (r *record) measured(t *cases.Test) facts {
	var list facts
	list.add("Pressure at the start", r.say.pressure(t.StartKPa))
	list.add("Pressure at the end", r.say.pressure(t.EndKPa))
	list.add("Held for", number(t.Minutes, "min"))
	list.add("Temperature, start", r.say.temp(t.StartC))
	list.add("Temperature, end", r.say.temp(t.EndC))
	list.add("Cap rated", r.say.pressure(t.RatedKPa))
	list.add("Cap opens", r.say.pressure(t.OpensKPa))
	list.add("Cap holds", yes(t.Holds, "yes", "no"))
	list.add("Vacuum valve", yes(t.VacuumValveOK, "works", "doesn't work"))
	list.add("Result", gas(t.Result))
	list.add("Freezes at", r.say.temp(t.FreezeC))
	list.add("Strength", number(t.VolumePercent, "% by volume"))
	list.add("pH", number(t.PH, ""))
	list.add("Stray voltage", number(t.StrayV, "V"))
	list.add("Looks", string(t.Looks))
	list.add("Rated to open at", r.say.temp(t.RatedOpensC))
	list.add("Rated full at", r.say.temp(t.RatedFullC))
	list.add("Rated lift", number(t.RatedLiftMM, "mm"))
	list.add("Fan commanded", yes(t.Commanded, "yes", "no"))
	list.add("Fan runs", yes(t.Runs, "yes", "no"))
	list.add("Fan starts at", r.say.temp(t.StartsC))
	list.add("Level", string(t.State))
	list.add("Belt", yes(t.BeltOK, "sound", "not sound"))
	list.add("Play in the pump", yes(t.Play, "yes", "no"))
	list.add("Pump weeps", yes(t.Weep, "yes", "no"))
	list.add("Lower hose", yes(t.LowerCollapses, "collapses", "keeps its shape"))
	list.add("Bubbles", yes(t.Seen, "seen", "none seen"))
	list.add("Flow", string(t.Flows))
	return list
}

// gas is what the combustion-gas test found.
func gas(g cases.GasResult) string {
	switch g {
	case "positive":
		return "gas found"
	case "negative":
		return "no gas found"
	}
	return string(g)
}

// bench writes the lines of a thermostat's or a sensor's record.
func (r *record) bench(t *cases.Test) {
	unit := ", " + string(r.say.Temperature)
	var lift, ohm [][]cell
	for _, b := range t.Points {
		if b.WaterC != nil || b.LiftMM != nil {
			lift = append(lift, cells(r.bare(b.WaterC), number(b.LiftMM, ""), yes(b.Heating, "heating", "cooling")))
		}
		if b.TempC != nil || b.Ohm != nil {
			ohm = append(ohm, cells(r.bare(b.TempC), number(b.Ohm, ""), "measured"))
		}
	}
	for _, b := range t.Reference {
		ohm = append(ohm, cells(r.bare(b.TempC), number(b.Ohm, ""), "reference"))
	}
	r.table([]column{{"Water" + unit, 1}, {"Lift, mm", 1}, {"On the way", 2}}, lift)
	r.table([]column{{"Temperature" + unit, 1}, {"Resistance, Ω", 1}, {"", 2}}, ohm)
}

// bare is a temperature without its unit.
func (r *record) bare(c *diagram.Celsius) string {
	if c == nil {
		return ""
	}
	return r.say.Temp(*c)
}

// faceColumns is how many places across a core fit a table side by side.
const faceColumns = 12

// face writes a core's scan, in pieces where it is wide.
func (r *record) face(rows [][]float64) {
	across := 0
	for _, row := range rows {
		across = max(across, len(row))
	}
	for from := 0; from < across; from += faceColumns {
		to := min(across, from+faceColumns)
		columns := []column{{"Face, " + string(r.say.Temperature), 1.5}}
		for j := from; j < to; j++ {
			columns = append(columns, column{fmt.Sprint(j + 1), 1})
		}
		var out [][]cell
		for i, row := range rows {
			line := cells(fmt.Sprintf("row %d", i+1))
			for j := from; j < to; j++ {
				line = append(line, cell{text: r.place(row, j)})
			}
			out = append(out, line)
		}
		r.table(columns, out)
	}
}

func (r *record) place(row []float64, j int) string {
	if j >= len(row) || math.IsNaN(row[j]) {
		return "–"
	}
	return r.say.Temp(diagram.Celsius(row[j]))
}
