package picture_test

import (
	"math"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/diagram/warmup"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

// One place of nine is more than 8 K colder than those equally far from the
// inlet (DT14, common practice) and framed; a gap stays one.
func TestAFaceAsAHeatMap(t *testing.T) {
	scan := &cases.Test{Kind: "core-scan", ShownC: [][]float64{{85, 84, 85}, {70, 50, 70}, {55, 55, math.NaN()}}}
	f, ok := picture.FaceScan(scan, say.English().With(units.US()))
	if !ok || f.Unit != "°F" || f.Rows[0][0].Text != "185" || !math.IsNaN(f.Rows[2][2].Value) {
		t.Fatalf("%v, %+v", ok, f)
	}
	framed := 0
	for _, row := range f.Rows {
		for _, p := range row {
			if p.Framed {
				framed++
			}
		}
	}
	if framed != 1 || !f.Rows[1][1].Framed || f.Words == "" {
		t.Errorf("%d places framed", framed)
	}
	if _, ok := picture.FaceScan(&cases.Test{Kind: "level"}, say.English()); ok {
		t.Error("a level has a face")
	}
}

// Each round is a line of its own stroke along the flow, over what was read.
func TestRoundsAlongTheFlow(t *testing.T) {
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	c := hot()
	c.Rounds = append(c.Rounds, c.Rounds[0], cases.Round{Label: "nothing read"})
	c.Rounds[1].Label, c.Rounds[1].Stage = "hot idle", cases.AfterRepair
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	lines, ok := picture.HoseMap(l, &c, a.Analyse(&c), say.English())
	if !ok || len(lines.Curves) != 2 || lines.Curves[0].Kind == lines.Curves[1].Kind || !lines.Curves[1].Dotted {
		t.Fatalf("%v, %d curves", ok, len(lines.Curves))
	}
	if got := lines.Curves[1].Name; got != "hot idle, after repair" {
		t.Errorf("named %q", got)
	}
	if !lines.Curves[0].Kind.InSecond() || lines.Curves[1].Kind.InSecond() {
		t.Errorf("before the repair %v, after it %v: want them in the colours of the proof", lines.Curves[0].Kind, lines.Curves[1].Kind)
	}
	first := lines.Curves[0]
	if len(first.X) < 2 || lines.Names[int(first.X[0])] == "" || len(lines.Names) >= len(l.Points) {
		t.Errorf("points %v of %v", first.X, lines.Names)
	}
	if lines.X != "" {
		t.Errorf("all rounds are drawn, and the picture says %q", lines.X)
	}
	for range [6]int{} {
		c.Rounds = append(c.Rounds, c.Rounds[0])
	}
	if lines, _ := picture.HoseMap(l, &c, a.Analyse(&c), say.English()); len(lines.Curves) != 6 || lines.X != "only the last 6 rounds" {
		t.Errorf("of 8 rounds %d lines are drawn, with %q", len(lines.Curves), lines.X)
	}
	if _, ok := picture.HoseMap(l, &cases.Case{}, evidence.Findings{}, say.English()); ok {
		t.Error("no round is a line")
	}
}

// Both warm-ups begin with their engine's start, whatever their clocks say.
func TestWarmUpsOverEachOther(t *testing.T) {
	log := func(from float64) *cases.Log {
		return &cases.Log{TimeS: []float64{from - 60, from, from + 600}, EctC: []float64{10, 10, 80}}
	}
	c := &cases.Case{Loop: cases.Loop{ThermostatOpensC: casetest.P(diagram.Celsius(88))}}
	lines := picture.BothWarmUps(c, log(300), log(60), warmup.Result{StartS: 300}, warmup.Result{StartS: 60, Knee: &warmup.Knee{C: 88, S: 540}}, say.English())
	if len(lines.Curves) != 2 || lines.Curves[0].X[0] != 0 || lines.Curves[1].X[1] != 10 || lines.Curves[1].Kind != chart.Second {
		t.Errorf("%+v", lines.Curves)
	}
	if len(lines.Marks) != 1 || lines.Marks[0].X != 9 || len(lines.Levels) != 1 {
		t.Errorf("marks %+v, levels %+v", lines.Marks, lines.Levels)
	}
	opens := warmup.Result{StartS: 300, Knee: &warmup.Knee{C: 88, S: 540}}
	for after, above := range map[*cases.Log]bool{nil: true, log(60): false} {
		if m := picture.BothWarmUps(c, log(300), after, opens, warmup.Result{StartS: 60}, say.English()).Marks; len(m) != 1 || m[0].Above != above {
			t.Errorf("before it alone %v: %+v", after == nil, m)
		}
	}
}

// At a point stands what was measured after the repair over what was measured
// before it, and whether it is in its range now.
func TestBeforeUnderAfter(t *testing.T) {
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	c := hot()
	c.Rounds = append(c.Rounds, c.Rounds[0])
	c.Rounds[1].Stage = cases.AfterRepair
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	before, after := diagram.Celsius(42), diagram.Celsius(86)
	p := proof.Pair{Before: 0, After: 1, Points: []proof.Point{{Point: diagram.RadIn, Before: &before, After: &after, State: evidence.InRange}}}
	seen := map[string]bool{}
	for _, s := range picture.Pair(l, &c, a.Analyse(&c), p, say.English()).Shapes {
		if label, ok := s.(drawing.Label); ok {
			seen[label.Text] = true
		}
	}
	if !seen["42"] || !seen["86"] {
		t.Errorf("the drawing says %v", seen)
	}
}

// One maker's curve (published, V16: NTC20 to NTC100, 2502 to 175.7 Ω) spans hardly more than a decade: its axis says what
// it is of, and has numbers enough to read it off. In kilohms a single value under 1 is drawn too.
func TestASensorsResistanceCanBeReadOff(t *testing.T) {
	drawn := func(reference, measured [][2]float64) string {
		test := cases.Test{Kind: "sensor-resistance"}
		for _, p := range reference {
			test.Reference = append(test.Reference, cases.OhmPoint{TempC: casetest.P(diagram.Celsius(p[0])), Ohm: &p[1]})
		}
		for _, p := range measured {
			test.Points = append(test.Points, cases.BenchPoint{TempC: casetest.P(diagram.Celsius(p[0])), Ohm: &p[1]})
		}
		lines, ok := picture.Test(&test, say.English())
		svg, err := chart.SVG(lines, chart.Plain(), 400, 200)
		if !ok || err != nil {
			t.Fatal(ok, err)
		}
		return string(svg)
	}
	svg := drawn([][2]float64{{20, 2502}, {50, 806.9}, {80, 308.6}, {100, 175.7}}, [][2]float64{{20, 2400}})
	for _, want := range []string{">200<", ">500<", ">1000<", ">2000<", ">resistance, Ω<", ">sensor, °C<"} {
		if !strings.Contains(svg, want) {
			t.Errorf("the plot lacks %q", want)
		}
	}
	drawn([][2]float64{{80, 0.31}}, [][2]float64{{80, 0.31}})
}
