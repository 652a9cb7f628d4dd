package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// look is what a severity is known by: its mark, its card's ground and edge, and the colour of its word.
type look struct {
	sign       drawing.Shape
	fill, edge drawing.Role
	head       widget.Importance
}

// lookOf has a triangle to act, a diamond to look, a disc to note, a ring where all is well.
func lookOf(severity string) look {
	c := diagram.XY{9, 9}
	switch severity {
	case "act":
		return look{
			drawing.Wedge{Center: diagram.XY{9, 10.5}, Radius: 8.5, Toward: drawing.Up, Fill: drawing.In(drawing.ActSign), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1},
			drawing.ActGround, drawing.ActText, widget.DangerImportance,
		}
	case "look":
		return look{
			drawing.Rhomb{Center: c, Radius: 8, Fill: drawing.In(drawing.LookSign), Stroke: drawing.In(drawing.LookText), StrokeWidth: 1},
			drawing.LookGround, drawing.LookText, widget.WarningImportance,
		}
	case "note":
		return look{
			drawing.Disc{Center: c, Radius: 6.5, Fill: drawing.In(drawing.NoteSign), Stroke: drawing.In(drawing.NoteText), StrokeWidth: 1},
			drawing.NoteGround, drawing.NoteText, widget.HighImportance,
		}
	}
	return look{
		drawing.Disc{Center: c, Radius: 6, Stroke: drawing.In(drawing.FineText), StrokeWidth: 2.5},
		drawing.FineGround, drawing.FineText, widget.SuccessImportance,
	}
}

// Sign is the mark of a severity.
func Sign(severity string) *Picture { return NewPicture(18, 18, lookOf(severity).sign) }

// Grounds gives the ground and the edge of a severity's card.
func Grounds(severity string) (fill, edge drawing.Role) {
	of := lookOf(severity)
	return of.fill, of.edge
}

// Card is a piece of news with its sign, its word and its reasons.
func Card(severity, word string, body ...Span) fyne.CanvasObject {
	return CardOf(severity, word, Paragraphs(body...))
}

// CardOf is a card whose reasons change while it stands. A card made anew for other
// words doesn't know how wide it will be, asks for one line, and the toolkit's painter
// may forget to ask it again.
func CardOf(severity, word string, body *Prose) fyne.CanvasObject {
	look := lookOf(severity)
	head := widget.NewLabel(word)
	head.TextStyle.Bold = true
	head.Importance = look.head
	top := container.NewHBox(container.NewCenter(Sign(severity)), head)
	return On(NewGround(look.fill, look.edge, 6), container.New(Tight{}, top, body))
}

// Signed puts a severity's sign before the first line of a small text.
func Signed(severity string, text fyne.CanvasObject) fyne.CanvasObject {
	sign := container.NewVBox(container.NewStack(Caption(""), container.NewCenter(Sign(severity))))
	return container.NewBorder(nil, nil, sign, nil, text)
}

// Warning is a small text that is to be seen, with its sign.
func Warning(text string) fyne.CanvasObject {
	return Signed("look", Paragraphs(Span{Text: text, Small: true, Bold: true, Color: theme.ColorNameWarning}))
}
