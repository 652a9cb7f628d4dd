package main

import (
	"loopbook/app/ui/hosemap"
	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/report/picture"
)

func (w *window) showHoseMap() {
	d := w.desk
	picture, texts := drawingOf(d)
	w.hosemap.Show(hosemap.Data{
		Case: d.c, Round: d.round, Picture: picture, Texts: texts,
		Flags: d.found.Flags, Boiling: boilingWords(d.found.Boiling, d.units), ToDo: w.toDo(), Units: d.units,
	})
}

// shownAt is what the gun showed at a point of the round, in the units chosen.
func shownAt(d *desk, p diagram.Point) string {
	if d.round < 0 {
		return ""
	}
	if r := d.c.Rounds[d.round].Reading(p); r != nil && r.ShownC != nil {
		return d.units.Temp(*r.ShownC)
	}
	return ""
}

// drawingOf is the picture of the round, with what stands in its fields.
func drawingOf(d *desk) (drawing.Picture, map[diagram.Point]kit.Typed) {
	l, err := diagram.LoopByID(d.c.Loop.Layout)
	if err != nil {
		return drawing.Picture{}, nil
	}
	state := picture.State(l, &d.c, d.found, d.round, d.by())
	texts := map[diagram.Point]kit.Typed{}
	for p, s := range state.Points {
		if s.Mark == drawing.CantReach {
			continue
		}
		texts[p] = kit.Typed{Rest: s.Text, Edit: shownAt(d, p)}
	}
	for p, slip := range d.slips {
		s := state.Points[p]
		s.Mark, s.Range, s.Note = drawing.Invalid, "", slip.why
		state.Points[p], texts[p] = s, kit.Typed{Rest: slip.text, Edit: slip.text}
	}
	if !d.judging.ranged {
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
