package report

import (
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// The signs of a severity, 12 points high: each has its own shape.
func signAct() drawing.Shape {
	return drawing.Wedge{Center: diagram.XY{6, 7.5}, Radius: 6, Toward: drawing.Up, Fill: drawing.In(drawing.ActSign), Stroke: drawing.In(drawing.ActText), StrokeWidth: 0.8}
}

func signLook() drawing.Shape {
	return drawing.Rhomb{Center: diagram.XY{6, 6}, Radius: 5.5, Fill: drawing.In(drawing.LookSign), Stroke: drawing.In(drawing.LookText), StrokeWidth: 0.8}
}

func signNote() drawing.Shape {
	return drawing.Disc{Center: diagram.XY{6, 6}, Radius: 4.5, Fill: drawing.In(drawing.NoteSign), Stroke: drawing.In(drawing.NoteText), StrokeWidth: 0.8}
}

func signFine() drawing.Shape {
	return drawing.Disc{Center: diagram.XY{6, 6}, Radius: 4.5, Stroke: drawing.In(drawing.FineText), StrokeWidth: 1.8}
}

// mood is a sign with the colours of what stands under it.
type mood struct {
	sign       drawing.Shape
	fill, edge drawing.Role
}

func moodAct() mood  { return mood{signAct(), drawing.ActGround, drawing.ActText} }
func moodLook() mood { return mood{signLook(), drawing.LookGround, drawing.LookText} }
func moodNote() mood { return mood{signNote(), drawing.NoteGround, drawing.NoteText} }
func moodFine() mood { return mood{signFine(), drawing.FineGround, drawing.FineText} }
