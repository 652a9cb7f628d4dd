package picture_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
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
