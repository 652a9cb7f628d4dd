package picture

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/report/chart"
)

// mostRounds can be told from each other by their strokes.
const mostRounds = 6

// HoseMap is the temperatures of the points along the flow, a line for each
// round; with more rounds than can be told apart it is the last ones, and says so. Air has no
// place in it. It is false where no round has two points.
func HoseMap(l *diagram.Loop, c *cases.Case, f evidence.Findings, by say.Speaker) (chart.Lines, bool) {
	lines := chart.Lines{Y: by.Of("chart.hose", string(by.Units.Temperature))}
	var points []diagram.Point
	for _, at := range l.Points {
		if !at.Point.Air() {
			points = append(points, at.Point)
			lines.Names = append(lines.Names, by.Say(say.PointName(at.Point)))
		}
	}
	var after []bool // the repair, of each curve
	for i := range f.Rounds {
		if curve, ok := roundCurve(points, c, f, i, by); ok {
			lines.Curves, after = append(lines.Curves, curve), append(after, c.Rounds[i].Stage == cases.AfterRepair)
		}
	}
	if n := len(lines.Curves); n > mostRounds {
		lines.X = by.Of("chart.last-rounds", mostRounds)
		lines.Curves, after = lines.Curves[n-mostRounds:], after[n-mostRounds:]
	}
	for i, kind := range strokes(after) {
		lines.Curves[i].Kind, lines.Curves[i].Dotted = kind, true
	}
	return lines, len(lines.Curves) > 0
}

// strokes gives each round one of its own. Where there are rounds from before the repair and from after it, those before have
// the second colour, as in the proof, while there is a stroke of it left.
func strokes(after []bool) []chart.Kind {
	free, out := chart.Joined(), make([]chart.Kind, len(after))
	both := slices.Contains(after, true) && slices.Contains(after, false)
	for i, a := range after {
		at := 0
		if both {
			at = max(0, slices.IndexFunc(free, func(k chart.Kind) bool { return k.InSecond() != a }))
		}
		out[i] = free[at]
		free = slices.Delete(free, at, at+1)
	}
	return out
}

func roundCurve(points []diagram.Point, c *cases.Case, f evidence.Findings, round int, by say.Speaker) (chart.Curve, bool) {
	curve := chart.Curve{Name: RoundName(c, round, by)}
	for at, p := range points {
		r, ok := f.Rounds[round].Readings[p]
		if !ok || !r.Usable() {
			continue // the line goes on to the next point that was read
		}
		curve.X, curve.Y = append(curve.X, float64(at)), append(curve.Y, math.Round(10*by.Units.FromC(r.TrueC))/10)
	}
	return curve, len(curve.X) > 1
}

// RoundName is a round's label, or its number, and its stage where that is after
// the repair.
func RoundName(c *cases.Case, round int, by say.Speaker) string {
	name := by.Say(c.Rounds[round].Title())
	if name == "" {
		name = by.Of("chart.round", round+1)
	}
	if c.Rounds[round].Stage == cases.AfterRepair {
		name += ", " + by.Say(cases.AfterRepair.Text())
	}
	return name
}
