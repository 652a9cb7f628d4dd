package hosemap

import (
	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/report/picture"
)

// shownAt is what the gun showed at a point of the round, in the units chosen.
func shownAt(d *desk.Desk, p diagram.Point) string {
	if d.Round < 0 {
		return ""
	}
	if r := d.Case.Rounds[d.Round].Reading(p); r != nil && r.ShownC != nil {
		return d.Units.Temp(*r.ShownC)
	}
	return ""
}

// drawingOf is the picture of the round, with what stands in its fields.
func drawingOf(d *desk.Desk) (drawing.Picture, map[diagram.Point]kit.Typed) {
	l, err := diagram.LoopByID(d.Case.Loop.Layout)
	if err != nil {
		return drawing.Picture{}, nil
	}
	state := picture.State(l, &d.Case, d.Found, d.Round, d.By())
	texts := map[diagram.Point]kit.Typed{}
	for p, s := range state.Points {
		if s.Mark == drawing.CantReach {
			continue
		}
		texts[p] = kit.Typed{Rest: s.Text, Edit: shownAt(d, p)}
	}
	for p, slip := range d.Slips() {
		s := state.Points[p]
		s.Mark, s.Range, s.Note = drawing.Invalid, "", slip.Why
		state.Points[p], texts[p] = s, kit.Typed{Rest: slip.Text, Edit: slip.Text}
	}
	if !d.Ranged() {
		unmarked(state)
	}
	return drawing.Draw(l, state, false), texts
}

// unmarked leaves out what is expected at the hoses, and who is out of it: with the
// cars that are being simulated it may be another thing in a moment.
func unmarked(s drawing.State) {
	for p, at := range s.Points {
		at.LowC, at.HighC, at.Range = nil, nil, ""
		if at.Mark == drawing.OutOfRange {
			at.Mark, at.Note = drawing.Kept, ""
		}
		s.Points[p] = at
	}
	for name, at := range s.Deltas {
		s.Deltas[name] = drawing.DeltaState{Text: at.Text, ValK: at.ValK, Mark: drawing.Kept}
	}
}
