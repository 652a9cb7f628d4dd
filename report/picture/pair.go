package picture

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// Pair is the drawing of a round after the repair with, at each point, what the
// round before it of the same condition showed. The sign says whether the point
// is in its range now.
func Pair(l *diagram.Loop, c *cases.Case, f evidence.Findings, p proof.Pair, by say.Speaker) drawing.Picture {
	ghosts := map[diagram.Point]drawing.Ghost{}
	for _, at := range p.Points {
		g := drawing.Ghost{}
		if at.After != nil {
			g.Measured = by.Units.Temp(*at.After)
		}
		if at.Before != nil {
			g.Would = by.Units.Temp(*at.Before)
		}
		switch at.State {
		case evidence.InRange:
			g.Match = drawing.Agrees
		case evidence.Low, evidence.High:
			g.Match = drawing.Differs
		}
		ghosts[at.Point] = g
	}
	return drawing.DrawGhosts(l, State(l, c, f, p.After, by), ghosts)
}
