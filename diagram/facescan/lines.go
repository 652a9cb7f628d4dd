package facescan

import (
	"math"
	"slices"
)

// evenK is more than any core cools coolant by.
const evenK = 1000

// runs tells how much like coolant on its way the lines cool, in kelvins: by as
// many of the usual steps between their medians as there are steps. Coolant cools
// steadily; plugged tubes are one large step and many small ones. Lines that are
// even in themselves need no other proof.
func runs(lines [][]float64) float64 {
	if most := spread(lines); most < SuspectK {
		return evenK - float64(most)
	}
	m := medians(lines)
	if len(m) < 2 {
		return 0
	}
	if m[0] > m[len(m)-1] {
		slices.Reverse(m)
	}
	steps := make([]float64, len(m)-1)
	for i := range steps {
		steps[i] = m[i+1] - m[i]
	}
	return float64(len(steps)) * sorted(steps)[(len(steps)-1)/2]
}

// residuals are the places less the median of their line.
func residuals(lines [][]float64) [][]float64 {
	return less(lines, func(line []float64) float64 { return median(known(line)) })
}

// belowWarmest are the places less the warmest tube's, line by line: where most
// tubes are plugged, the median is one of them. A gap in that tube leaves the
// warmest place of its line.
func belowWarmest(lines, off [][]float64) [][]float64 {
	tube, warmest := 0, math.Inf(-1)
	for j, t := range turned(off) {
		if v := known(t); len(v) > 0 && mean(v) > warmest {
			tube, warmest = j, mean(v)
		}
	}
	return less(lines, func(line []float64) float64 {
		if w := line[tube]; !math.IsNaN(w) {
			return w
		}
		return slices.Max(known(line))
	})
}

func less(lines [][]float64, of func([]float64) float64) [][]float64 {
	out := make([][]float64, len(lines))
	for i, line := range lines {
		out[i] = slices.Clone(line)
		if len(known(line)) > 0 {
			by := of(line)
			for j := range out[i] {
				out[i][j] -= by
			}
		}
	}
	return out
}

// lineShare is the share of the squares of off that the means of its columns
// explain: 1 where each tube is off by as much all along.
func lineShare(off [][]float64) float64 {
	all, explained := 0.0, 0.0
	for _, tube := range turned(off) {
		v := known(tube)
		if len(v) == 0 {
			continue
		}
		m := mean(v)
		for _, x := range v {
			all += x * x
		}
		explained += m * m * float64(len(v))
	}
	if all == 0 {
		return 0
	}
	return explained / all
}

func extremes(lines [][]float64) (low, high float64) {
	for _, line := range lines {
		for _, v := range known(line) {
			low, high = min(low, v), max(high, v)
		}
	}
	return low, high
}

// squared fills short rows up with gaps.
func squared(rows [][]float64) [][]float64 {
	most := 0
	for _, row := range rows {
		most = max(most, len(row))
	}
	out := make([][]float64, len(rows))
	for i, row := range rows {
		out[i] = slices.Clone(row)
		for len(out[i]) < most {
			out[i] = append(out[i], math.NaN())
		}
	}
	return out
}

func places(g [][]float64) [][]bool {
	out := make([][]bool, len(g))
	for i := range g {
		out[i] = make([]bool, len(g[i]))
	}
	return out
}

func turned(lines [][]float64) [][]float64 {
	if len(lines) == 0 {
		return nil
	}
	out := make([][]float64, len(lines[0]))
	for _, line := range lines {
		for j, v := range line {
			out[j] = append(out[j], v)
		}
	}
	return out
}

func known(line []float64) []float64 {
	var out []float64
	for _, v := range line {
		if !math.IsNaN(v) {
			out = append(out, v)
		}
	}
	return out
}

func sorted(v []float64) []float64 {
	s := slices.Clone(v)
	slices.Sort(s)
	return s
}

func median(v []float64) float64 {
	s := sorted(v)
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// medians are those of the lines that hold anything.
func medians(lines [][]float64) []float64 {
	var out []float64
	for _, line := range lines {
		if v := known(line); len(v) > 0 {
			out = append(out, median(v))
		}
	}
	return out
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
