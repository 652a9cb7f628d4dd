// Package lift finds where a thermostat in heated water opens, from a table of
// temperatures and lifts.
//
// The curve is a broken line: shut up to the opening, straight up from there,
// level once fully open. It is laid so that the sum of its distances from the
// points is least (not of their squares), so one slip of the pen moves nothing.
package lift

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"loopbook/diagram"
)

// Point is a lift in millimetres in water of that temperature.
type Point struct {
	WaterC diagram.Celsius
	MM     float64
}

// Curve is the broken line through the points of one way: up or down.
type Curve struct {
	OpensC diagram.Celsius // the knee; on the way down it shuts there
	// Between these the knee fits the points about as well: they say how sure
	// OpensC is.
	EarliestC, LatestC diagram.Celsius
	FullC              diagram.Celsius // the second knee
	Levelled           bool            // two points show it as far open as it goes: else it may have gone on
	BaseMM             float64         // how far it stands open cold
	FullMM             float64         // at the hottest point
	Moves              bool            // it lifts at all; else only the lifts are known
}

// ErrPoints says that there is no point with both numbers.
var ErrPoints = errors.New("a lift curve needs a point")

// Steps of the search, in kelvins. Thermostats run from shut to full in 6 to
// 15 K (TH2 of testdata/trade/numbers.csv, published); 30 K is far beyond.
const (
	kneeStepK  = 0.5
	widthStepK = 1
	widestK    = 30
)

// MovesMM is the least lift that counts as one: a tenth of a millimetre is the
// first movement that the eye sees (common practice), and twice that is none
// by a slip of the rule.
const MovesMM = 0.3

// slackMM is by how much the sum of distances may grow before a knee fits
// worse: three readings off by a tenth each (judgement).
const slackMM = 0.3

// Fit lays the broken line through points, in any order. Points whose numbers
// aren't finite are left out. Two points only tell between which temperatures
// it opens, one how far it stands open there.
func Fit(points []Point) (Curve, error) {
	p := usable(points)
	if len(p) == 0 {
		return Curve{}, ErrPoints
	}
	base, most := p[0].MM, p[0].MM
	for _, x := range p {
		base, most = min(base, x.MM), max(most, x.MM)
	}
	if most-base < MovesMM || p[0].WaterC == p[len(p)-1].WaterC {
		return Curve{BaseMM: median(p), FullMM: median(p)}, nil
	}
	return search(p), nil
}

func usable(points []Point) []Point {
	var out []Point
	for _, p := range points {
		if p.WaterC.Plausible() && !math.IsNaN(p.MM) && !math.IsInf(p.MM, 0) {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b Point) int { return cmp.Compare(a.WaterC, b.WaterC) })
	return out
}

// search tries every knee and every width, and takes the middle of the knees
// that fit best: between two wide steps of the water many do.
func search(p []Point) Curve {
	best := math.Inf(1)
	var costs []float64
	var lines []line
	for at := p[0].WaterC; at < p[len(p)-1].WaterC; at += kneeStepK {
		l, cost := bestWidth(p, at)
		costs, lines = append(costs, cost), append(lines, l)
		best = min(best, cost)
	}
	exact := within(costs, best+1e-6)
	near := within(costs, best+slackMM)
	l := lines[(exact[0]+exact[1])/2]
	hottest := p[len(p)-1].WaterC
	top := l.at(hottest)
	levelled := l.full < hottest && slices.ContainsFunc(p[:len(p)-1], func(x Point) bool { return x.MM > top-MovesMM })
	return Curve{
		OpensC: l.opens, EarliestC: lines[near[0]].opens, LatestC: lines[near[1]].opens,
		FullC: min(l.full, hottest), Levelled: levelled,
		BaseMM: l.base, FullMM: top, Moves: true,
	}
}

// within is the first and last of the costs around the least that stay under a
// limit.
func within(costs []float64, limit float64) [2]int {
	least := 0
	for i, c := range costs {
		if c < costs[least] {
			least = i
		}
	}
	low, high := least, least
	for low > 0 && costs[low-1] <= limit {
		low--
	}
	for high < len(costs)-1 && costs[high+1] <= limit {
		high++
	}
	return [2]int{low, high}
}

// HysteresisK is how much further the water has to cool than it was warmed for
// the same lift, half of what both reach.
func HysteresisK(up, down Curve) (diagram.DeltaK, bool) {
	half := (up.BaseMM + min(up.FullMM, down.FullMM)) / 2
	a, okUp := up.reaches(half)
	b, okDown := down.reaches(half)
	return a.Minus(b), okUp && okDown
}

func (c Curve) reaches(mm float64) (diagram.Celsius, bool) {
	if !c.Moves || !(mm > c.BaseMM && mm < c.FullMM) {
		return 0, false
	}
	return c.OpensC + (c.FullC-c.OpensC)*diagram.Celsius((mm-c.BaseMM)/(c.FullMM-c.BaseMM)), true
}
