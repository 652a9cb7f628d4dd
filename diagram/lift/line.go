package lift

import (
	"math"
	"slices"

	"loopbook/diagram"
)

// line is a broken line: base up to opens, base and rise from full on.
type line struct {
	opens, full diagram.Celsius
	base, rise  float64
}

func (l line) at(t diagram.Celsius) float64 {
	return l.base + l.rise*min(max(float64((t-l.opens)/(l.full-l.opens)), 0), 1)
}

// bestWidth is the best line with its knee there, and its sum of distances.
func bestWidth(p []Point, opens diagram.Celsius) (line, float64) {
	best, least := line{opens: opens, full: opens + widthStepK}, math.Inf(1)
	base := cold(p, opens)
	for width := diagram.Celsius(widthStepK); width <= widestK; width += widthStepK {
		l := line{opens, opens + width, base, 0}
		l.rise = rise(p, l)
		cost := 0.0
		for _, x := range p {
			cost += math.Abs(x.MM - l.at(x.WaterC))
		}
		if cost < least-1e-9 {
			best, least = l, cost
		}
	}
	return best, least
}

// cold is the lift before the knee: the median, so that one slip moves nothing.
func cold(p []Point, opens diagram.Celsius) float64 {
	n := 0
	for n < len(p) && p[n].WaterC <= opens {
		n++
	}
	return median(p[:n])
}

// rise is the height that makes the sum of distances least: the median of what
// each point asks for, weighed by how much it depends on it.
func rise(p []Point, l line) float64 {
	type ask struct{ height, weight float64 }
	asks := make([]ask, 0, len(p))
	sum := 0.0
	for _, x := range p {
		w := line{l.opens, l.full, 0, 1}.at(x.WaterC)
		if w > 0 {
			asks = append(asks, ask{(x.MM - l.base) / w, w})
			sum += w
		}
	}
	slices.SortFunc(asks, func(a, b ask) int {
		switch {
		case a.height < b.height:
			return -1
		case a.height > b.height:
			return 1
		}
		return 0
	})
	half := 0.0
	for _, a := range asks {
		if half += a.weight; half >= sum/2 {
			return max(a.height, 0)
		}
	}
	return 0
}

func median(p []Point) float64 {
	if len(p) == 0 {
		return 0
	}
	mm := make([]float64, len(p))
	for i, x := range p {
		mm[i] = x.MM
	}
	slices.Sort(mm)
	return (mm[(len(mm)-1)/2] + mm[len(mm)/2]) / 2
}
