package facescan_test

import (
	"math"
	"math/rand"
	"testing"

	"loopbook/diagram/facescan"
)

// face is a healthy one of 5 rows and 6 columns: hot on top, 30 K lost on the
// way down, and even across ("even change, no cool patch": published, M17, V22).
func face() [][]float64 {
	var g [][]float64
	for i := 0; i < 5; i++ {
		row := make([]float64, 6)
		for j := range row {
			row[j] = 90 - 7.5*float64(i)
		}
		g = append(g, row)
	}
	return g
}

// mild is one that takes 10 K from the coolant, as at much flow.
func mild() [][]float64 {
	g := face()
	for i := range g {
		change(g, 5*float64(i), func(row, _ int) bool { return row == i })
	}
	return g
}

func change(g [][]float64, by float64, in func(i, j int) bool) [][]float64 {
	for i, row := range g {
		for j := range row {
			if in(i, j) {
				row[j] += by
			}
		}
	}
	return g
}

func transpose(g [][]float64) [][]float64 {
	out := make([][]float64, len(g[0]))
	for _, row := range g {
		for j, v := range row {
			out[j] = append(out[j], v)
		}
	}
	return out
}

// A radiator lies either way; what is judged mustn't depend on it.
func TestPatterns(t *testing.T) {
	for _, tt := range []struct {
		name  string
		grid  [][]float64
		want  facescan.Pattern
		share float64
	}{
		{"even", face(), facescan.Even, 0},
		{"6 K is no patch yet (DT14)", change(face(), -6, func(i, j int) bool { return j == 1 }), facescan.Even, 0},
		{"one line of tubes without flow", change(face(), -30, func(_, j int) bool { return j == 1 }), facescan.Tubes, 1. / 6},
		{"half of the tubes without flow", change(face(), -30, func(_, j int) bool { return j < 3 }), facescan.Tubes, 0.5},
		{"half of the tubes without flow, and little heat lost", change(mild(), -30, func(_, j int) bool { return j < 3 }), facescan.Tubes, 0.5},
		{"every third tube without flow", change(face(), -30, func(_, j int) bool { return j%3 == 0 }), facescan.Tubes, 2. / 6},
		{"most tubes without flow", change(face(), -30, func(_, j int) bool { return j < 4 }), facescan.Tubes, 4. / 6},
		{"mud in a lower corner", change(face(), -20, func(i, j int) bool { return i == 4 && j < 2 }), facescan.Cold, 2. / 30},
		{"fins packed in one place", change(face(), 15, func(i, j int) bool { return i == 2 && j == 3 }), facescan.Hot, 0},
	} {
		for way, grid := range map[facescan.Way][][]float64{facescan.Down: tt.grid, facescan.Across: transpose(tt.grid)} {
			f := facescan.Judge(grid)
			if f.Pattern != tt.want || f.Way != way || math.Abs(f.ColdShare-tt.share) > 1e-9 {
				t.Errorf("%s, coolant %s: %+v, want %q with %.2f cold", tt.name, way, f, tt.want, tt.share)
			}
		}
	}
}

// Tubes that are plugged below are warm where the coolant comes in: there
// nothing is cold.
func TestTubesAreColdOnlyWhereTheyAre(t *testing.T) {
	f := facescan.Judge([][]float64{
		{97, 97, 96, 96, 95, 95}, {92, 91, 90, 86, 79, 77}, {87, 85, 81, 68, 57, 54}, {81, 78, 71, 55, 45, 42}, {76, 72, 63, 49, 40, 37},
	})
	if f.Pattern != facescan.Tubes || f.ColdPlaces[0][5] || !f.ColdPlaces[4][5] || f.ColdPlaces[4][0] || f.ColdShare < 0.35 || f.ColdShare > 0.5 {
		t.Errorf("%+v", f)
	}
}

// A gun repeats to 1 K or so; that makes no pattern of a healthy face and
// hides none of a plugged one.
func TestNoiseMakesNoPattern(t *testing.T) {
	d := rand.New(rand.NewSource(2))
	for run := 0; run < 200; run++ {
		noisy := func(g [][]float64) [][]float64 {
			for _, row := range g {
				for j := range row {
					row[j] += d.NormFloat64()
				}
			}
			return g
		}
		if f := facescan.Judge(noisy(face())); f.Pattern != facescan.Even {
			t.Fatalf("healthy: %+v", f)
		}
		if f := facescan.Judge(noisy(change(face(), -20, func(_, j int) bool { return j == 4 }))); f.Pattern != facescan.Tubes || f.Way != facescan.Down || math.Abs(f.ColdShare-1./6) > 0.04 {
			t.Fatalf("plugged: %+v", f)
		}
	}
}

func TestGapsAndRaggedRowsCountForNothing(t *testing.T) {
	g := face()
	g[0][0], g[3][2] = math.NaN(), math.NaN()
	g[4] = g[4][:4]
	f := facescan.Judge(g)
	if f.Pattern != facescan.Even || f.PlacesKnown != 26 || f.MostK != 0 || f.Coldest != 60 || f.Hottest != 90 {
		t.Errorf("%+v", f)
	}
	for _, g := range [][][]float64{nil, {{80, 70, 60}}, {{80}, {70}}, {{math.NaN(), math.NaN()}, {math.NaN(), math.NaN()}}, {{}, {}}} {
		if f := facescan.Judge(g); f.Pattern != facescan.TooFew {
			t.Errorf("%v: %+v", g, f)
		}
	}
}
