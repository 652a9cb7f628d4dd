package picture

import (
	"sort"

	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/report/chart"
)

// Test is a workshop check's numbers as a curve: a thermostat's lift over the
// water's temperature, a sensor's resistance beside its reference, or a
// pressure over the minutes. It is false for a check that has none.
func Test(t *cases.Test, by say.Speaker) (chart.Lines, bool) {
	switch t.Kind {
	case cases.BenchTest:
		return bench(t, by)
	case cases.SensorTest:
		return sensor(t, by)
	case cases.PressureTest:
		return pressure(t, by)
	}
	return chart.Lines{}, false
}

// leastPoints is from where on a line says more than its numbers.
const leastPoints = 3

func bench(t *cases.Test, by say.Speaker) (chart.Lines, bool) {
	u := by.Units
	lines := chart.Lines{X: by.Of("chart.water", string(u.Temperature)), Y: by.Of("chart.lift")}
	points, heats := 0, cases.WayUp(t.Points)
	for _, way := range []struct {
		name    string
		heating bool
		kind    chart.Kind
	}{{by.Of("chart.heating"), true, chart.Main}, {by.Of("chart.cooling"), false, chart.Second}} {
		c := chart.Curve{Name: way.name, Kind: way.kind}
		for _, p := range t.Points {
			if p.WaterC != nil && p.LiftMM != nil && heats(p) == way.heating {
				c.X, c.Y = append(c.X, u.FromC(*p.WaterC)), append(c.Y, *p.LiftMM)
			}
		}
		if len(c.X) > 0 {
			points += len(c.X)
			sort.Sort(byX(c))
			lines.Curves = append(lines.Curves, c)
		}
	}
	if t.RatedOpensC != nil {
		lines.Marks = append(lines.Marks, chart.Mark{X: u.FromC(*t.RatedOpensC), Name: by.Of("chart.rated-to-open")})
	}
	if t.RatedLiftMM != nil {
		lines.Levels = append(lines.Levels, chart.Level{Y: *t.RatedLiftMM, Name: by.Of("chart.rated-lift")})
	}
	return lines, points >= leastPoints
}

func sensor(t *cases.Test, by say.Speaker) (chart.Lines, bool) {
	u := by.Units
	lines := chart.Lines{X: by.Of("chart.sensor", string(u.Temperature)), Y: by.Of("chart.ohms"), LogY: true}
	add := func(name string, kind chart.Kind, at []cases.OhmPoint) {
		c := chart.Curve{Name: name, Kind: kind}
		for _, p := range at {
			if p.TempC != nil && p.Ohm != nil && *p.Ohm > 0 {
				c.X, c.Y = append(c.X, u.FromC(*p.TempC)), append(c.Y, *p.Ohm)
			}
		}
		if len(c.X) > 0 {
			sort.Sort(byX(c))
			lines.Curves = append(lines.Curves, c)
		}
	}
	add(by.Of("chart.reference"), chart.Second, t.Reference)
	var measured []cases.OhmPoint
	for _, p := range t.Points {
		measured = append(measured, cases.OhmPoint{TempC: p.TempC, Ohm: p.Ohm})
	}
	add(by.Of("chart.measured"), chart.Dots, measured)
	return lines, len(lines.Curves) == 2
}

func pressure(t *cases.Test, by say.Speaker) (chart.Lines, bool) {
	if t.StartKPa == nil || t.EndKPa == nil || t.Minutes == nil || !(*t.Minutes > 0) {
		return chart.Lines{}, false
	}
	u := by.Units
	c := chart.Curve{X: []float64{0, *t.Minutes}, Y: []float64{u.FromKPa(*t.StartKPa), u.FromKPa(*t.EndKPa)}}
	dots := c
	dots.Kind = chart.Dots
	return chart.Lines{
		X: by.Of("chart.minutes"), Y: by.Of("chart.pressure", string(u.Pressure)), Curves: []chart.Curve{c, dots},
		Levels: []chart.Level{{Name: by.Of("chart.none-left")}},
	}, true
}

// byX sorts a curve's points.
type byX chart.Curve

func (c byX) Len() int           { return len(c.X) }
func (c byX) Less(i, j int) bool { return c.X[i] < c.X[j] }
func (c byX) Swap(i, j int) {
	c.X[i], c.X[j] = c.X[j], c.X[i]
	c.Y[i], c.Y[j] = c.Y[j], c.Y[i]
}
