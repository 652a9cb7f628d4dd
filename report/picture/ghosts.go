package picture

import (
	"math"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// Ghosts hold what a round's drawing shows against what a cause would: would
// tells its range at a point, or false where it says nothing.
func Ghosts(l *diagram.Loop, s drawing.State, would func(diagram.Point) (evidence.Range, bool), by say.Speaker) map[diagram.Point]drawing.Ghost {
	out := make(map[diagram.Point]drawing.Ghost, len(l.Points))
	for _, at := range l.Points {
		shown := s.Points[at.Point]
		g := drawing.Ghost{Measured: shown.Text}
		if r, ok := would(at.Point); ok {
			g.Would = by.Units.TempRange(r.LowC, r.HighC)
			if shown.TrueC != nil && shown.Mark != drawing.Repeat {
				g.Match = matches(*shown.TrueC, r)
			}
		}
		out[at.Point] = g
	}
	return out
}

// matches compares as the numbers are read, in whole degrees.
func matches(c diagram.Celsius, r evidence.Range) drawing.Match {
	if v := math.Round(float64(c)); v >= math.Round(float64(r.LowC)) && v <= math.Round(float64(r.HighC)) {
		return drawing.Agrees
	}
	return drawing.Differs
}
