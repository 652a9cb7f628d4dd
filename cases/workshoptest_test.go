package cases_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

func TestWayUp(t *testing.T) {
	const up, down, unsaid = 'u', 'd', '-'
	for _, tt := range []struct {
		name  string
		water []float64
		said  string
		want  string
	}{
		{"as said", []float64{20, 80, 95, 85, 40}, "uuudd", "uuudd"},
		{"who says nothing warmed it", []float64{95, 20}, "--", "uu"},
		{"never hotter by cooling", []float64{20, 70, 95}, "ddd", "uuu"},
		{"cooled as it should", []float64{95, 70, 20}, "ddd", "ddd"},
		{"cooled, with a slip", []float64{95, 70, 75}, "ddd", "ddd"},
		{"both ways, each from the cold end", []float64{70, 95, 70, 95}, "uudd", "uudd"},
		{"one point tells no way", []float64{40}, "d", "d"},
	} {
		points := make([]cases.BenchPoint, len(tt.water))
		for i, c := range tt.water {
			points[i].WaterC = casetest.P(diagram.Celsius(c))
			if tt.said[i] != unsaid {
				points[i].Heating = casetest.P(tt.said[i] == up)
			}
		}
		got := ""
		for heats, i := cases.WayUp(points), 0; i < len(points); i++ {
			if heats(points[i]) {
				got += string(up)
			} else {
				got += string(down)
			}
		}
		if got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got, tt.want)
		}
	}
}
