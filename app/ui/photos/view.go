// Package photos is the screen of a case's pictures: each with its caption and
// the point of the loop that it shows.
package photos

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
)

// Data is what the screen shows.
type Data struct {
	Case   cases.Case
	Photos []Photo         // as the case's
	Points []diagram.Point // of the case's layout
	Says   string          // what was added last, or why it wasn't; "": nothing
}

// Photo is a picture as far as it is here.
type Photo struct {
	Image   image.Image // upright and small; nil: not here yet, or never
	Problem string      // why it can't be shown; "": none
}

// View is the screen.
type View struct {
	// OnAdd asks for files, OnPaste takes what is in the clipboard, OnOpen shows
	// a picture as large as the window.
	OnAdd   func()
	OnPaste func()
	OnOpen  func(i int)
	// PointName words a point.
	PointName func(diagram.Point) string

	edit    func(what string, change func(*cases.Case))
	cards   []*card
	made    []string // the files and the points that the cards were made of
	grid    *fyne.Container
	says    *widget.Label
	tools   fyne.CanvasObject // add and paste: over the pictures, or where there are none under what says so
	top     fyne.CanvasObject
	over    *fyne.Container
	invite  *fyne.Container
	empty   fyne.CanvasObject
	content fyne.CanvasObject
}

// The size of a card.
const (
	cardWidth  = 320
	cardHeight = 372
)

// New makes the screen; edit changes the case.
func New(edit func(string, func(*cases.Case))) *View {
	v := &View{
		OnAdd: func() {}, OnPaste: func() {}, OnOpen: func(int) {}, PointName: func(p diagram.Point) string { return string(p) },
		edit: edit, grid: container.NewGridWrap(fyne.NewSize(cardWidth, cardHeight)), says: kit.Small(""),
	}
	add := kit.NewButtonWithIcon(kit.L("window.photos.add"), theme.ContentAddIcon(), func() { v.OnAdd() })
	add.Importance = widget.HighImportance
	paste := kit.NewButtonWithIcon(kit.L("window.photos.paste"), theme.ContentPasteIcon(), func() { v.OnPaste() })
	v.tools = container.NewHBox(add, paste)
	v.invite = container.NewStack()
	v.over = container.NewStack()
	v.empty = container.NewCenter(container.NewVBox(kit.Wide(420, kit.Paragraphs(
		kit.Span{Text: kit.L("window.photos.none"), Bold: true}, kit.Span{Text: kit.L("window.photos.none-text")})), v.invite))
	v.top = container.NewPadded(container.NewBorder(nil, nil, v.over, nil, v.says))
	v.content = kit.Framed(v.top, nil, nil, nil, container.NewStack(v.empty, container.NewVScroll(container.NewPadded(v.grid))))
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Caption is the field of a picture's caption.
func (v *View) Caption(i int) fyne.Focusable { return v.cards[i].caption }

// Leave keeps what is being typed.
func (v *View) Leave() {
	for _, c := range v.cards {
		c.caption.Leave()
	}
}

// Show paints a case's pictures. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	v.says.SetText(d.Says)
	kit.SetVisible(len(d.Case.Photos) > 0 || d.Says != "", v.top)
	kit.Move(v.tools, v.over, v.invite, len(d.Case.Photos) > 0)
	kit.SetVisible(len(d.Case.Photos) == 0, v.empty)
	key := []string{d.Case.ID}
	for _, p := range d.Case.Photos {
		key = append(key, p.File)
	}
	for _, p := range d.Points {
		key = append(key, string(p))
	}
	if !slices.Equal(key, v.made) { // else the caret stays where it is
		v.made = key
		v.makeCards(d)
	}
	for i, c := range v.cards {
		shown := Photo{}
		if i < len(d.Photos) {
			shown = d.Photos[i]
		}
		c.show(d.Case.Photos[i], shown)
	}
}

func (v *View) makeCards(d Data) {
	v.grid.RemoveAll()
	v.cards = v.cards[:0]
	for i := range d.Case.Photos {
		c := newCard(v, i, d.Points)
		v.cards = append(v.cards, c)
		v.grid.Add(c.content)
	}
}
