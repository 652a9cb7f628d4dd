package picture_test

import (
	"math"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/diagram/warmup"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

// A check's curve holds its points in order, in the units chosen; one with too
// few numbers has none.
func TestChecksAsCurves(t *testing.T) {
	at := func(c, mm float64, heating bool) cases.BenchPoint {
		return cases.BenchPoint{WaterC: casetest.P(diagram.Celsius(c)), LiftMM: &mm, Heating: &heating}
	}
	bench := &cases.Test{Kind: "thermostat-bench", Points: []cases.BenchPoint{at(100, 8, true), at(80, 0, true), at(90, 3, false)}}
	l, ok := picture.Test(bench, say.English().With(units.US()))
	if !ok || len(l.Curves) != 2 || l.Curves[0].X[0] != 176 || l.Curves[0].Y[1] != 8 || l.Curves[1].Kind != chart.Second {
		t.Errorf("bench: %v, %+v", ok, l)
	}
	bench.Points = bench.Points[:1]
	if _, ok := picture.Test(bench, say.English()); ok {
		t.Error("one point is a curve")
	}
	hold := &cases.Test{Kind: "pressure-hold", StartKPa: casetest.P(diagram.KPa(110)), EndKPa: casetest.P(diagram.KPa(85)), Minutes: casetest.P(10.0)}
	if l, ok := picture.Test(hold, say.English()); !ok || l.Curves[0].Y[1] != 85 {
		t.Errorf("pressure: %v, %+v", ok, l)
	}
	if _, ok := picture.Test(&cases.Test{Kind: "level", State: "full"}, say.English()); ok {
		t.Error("a level has a curve")
	}
}

// Every other row of a scan tool that asks for one value after the other lacks the coolant: the line goes on, as far as the
// analysis lets one cross a gap (a minute, judgement). A longer gap stays one.
func TestALogOfOneValueAfterTheOtherIsALine(t *testing.T) {
	l := cases.Log{}
	for s := 0.0; s < 600; s += 5 {
		c := 12 + s/10
		if int(s/5)%2 == 1 || s > 200 && s < 300 {
			c = math.NaN()
		}
		l.TimeS, l.EctC = append(l.TimeS, s), append(l.EctC, c)
	}
	for name, lines := range map[string]chart.Lines{
		"one":  picture.WarmUp(&cases.Case{}, &l, warmup.Result{}, nil, say.English()),
		"both": picture.BothWarmUps(&cases.Case{}, nil, &l, warmup.Result{}, warmup.Result{}, say.English()),
	} {
		lines.Curves = append([]chart.Curve{{}}, lines.Curves...) // as of a log without any coolant, which is drawn beside it
		lines.Marks = []chart.Mark{{X: 1, Y: 12}}
		if _, err := chart.SVG(lines, chart.Plain(), 400, 200); err != nil {
			t.Error(err)
		}
		lines.Curves = lines.Curves[1:]
		gaps, points := 0, len(lines.Curves[0].Y)
		for _, y := range lines.Curves[0].Y {
			if math.IsNaN(y) {
				gaps++
			}
		}
		if gaps != 1 || points != 52 { // 60 rows with the coolant less 9 in the gap, and the gap
			t.Errorf("%s: %d gaps, %d points", name, gaps, points)
		}
	}
}
