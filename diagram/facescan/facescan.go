// Package facescan judges a grid of temperatures over a radiator's face.
//
// Coolant cools on its way through the core, so places equally far from the
// inlet should be alike. Temperatures are degrees Celsius, rows run from the
// top down, NaN is a place that wasn't read.
package facescan

import (
	"math"
	"slices"

	"loopbook/diagram"
)

// SuspectK is what two places equally far from the inlet may differ by: 8 to
// 10 K is suspect (DT14 of testdata/trade/numbers.csv, common practice).
const SuspectK = 8

// Way is how the coolant runs over the face.
type Way string

// The ways. Which end is the inlet doesn't matter.
const (
	Down   Way = "up or down"
	Across Way = "from side to side"
)

// Pattern is what the places that are off look like.
type Pattern string

// The patterns.
const (
	TooFew Pattern = ""      // not two lines each way
	Even   Pattern = "even"  // no place is off
	Tubes  Pattern = "tubes" // whole lines along the coolant's way are colder: tubes are plugged
	Cold   Pattern = "cold"  // a patch is colder, not a whole line: part of the tubes
	Hot    Pattern = "hot"   // a patch is hotter: no air takes its heat, fins are blocked
)

// Face is a judged grid.
type Face struct {
	Way         Way
	Pattern     Pattern
	MostK       diagram.DeltaK // the largest difference of places equally far from the inlet
	LostK       diagram.DeltaK // from the hottest to the coldest line across the way
	ColdShare   float64        // of the places read, 0 to 1: SuspectK or more colder than their like
	LineShare   float64        // of the unevenness that whole lines along the way explain, 0 to 1
	Coldest     diagram.Celsius
	Hottest     diagram.Celsius
	ColdPlaces  [][]bool // as the grid
	PlacesKnown int
}

// stripeShare is from which LineShare on plugged tubes are spoken of: below it
// most of the unevenness lies within lines (judgement).
const stripeShare = 0.6

// Judge judges a grid. Rows should be equally long; a short one ends in gaps.
func Judge(rows [][]float64) Face {
	g := squared(rows)
	f := Face{Coldest: diagram.MaxC, Hottest: diagram.MinC, ColdPlaces: places(g)}
	for _, row := range g {
		for _, v := range row {
			if !math.IsNaN(v) {
				f.PlacesKnown++
				f.Coldest, f.Hottest = min(f.Coldest, diagram.Celsius(v)), max(f.Hottest, diagram.Celsius(v))
			}
		}
	}
	if len(g) < 2 || len(g[0]) < 2 || f.PlacesKnown == 0 {
		return f
	}
	f.Way = Down
	along := g // lines of places that are equally far from the inlet
	if t := turned(g); runs(t) > runs(g) {
		f.Way, along = Across, t
	}
	f.MostK, f.LostK = spread(along), lost(along)
	f.LineShare = lineShare(residuals(along))
	f.judge(along)
	return f
}

// judge names the pattern and counts the cold places.
func (f *Face) judge(along [][]float64) {
	off := residuals(along)
	cold, hot := extremes(off)
	switch {
	case f.MostK < SuspectK:
		f.Pattern = Even
		return
	case f.LineShare >= stripeShare:
		f.Pattern = Tubes
		off = belowWarmest(along, off)
	case hot > -cold:
		f.Pattern = Hot
	default:
		f.Pattern = Cold
	}
	n := 0
	for i, row := range off {
		for j, v := range row {
			if !(v <= -SuspectK) {
				continue
			}
			n++
			if f.Way == Down {
				f.ColdPlaces[i][j] = true
			} else {
				f.ColdPlaces[j][i] = true
			}
		}
	}
	f.ColdShare = float64(n) / float64(f.PlacesKnown)
}

// spread is the largest difference within a line.
func spread(lines [][]float64) diagram.DeltaK {
	most := 0.0
	for _, line := range lines {
		if v := known(line); len(v) > 0 {
			most = max(most, slices.Max(v)-slices.Min(v))
		}
	}
	return diagram.DeltaK(most)
}

// lost is how far the lines' medians lie apart.
func lost(lines [][]float64) diagram.DeltaK {
	m := medians(lines)
	return diagram.DeltaK(slices.Max(m) - slices.Min(m))
}
