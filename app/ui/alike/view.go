// Package alike shows the cases most like the open one, with the reasons.
package alike

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Case is one that was found.
type Case struct {
	ID      string
	Title   string
	Vehicle string
	When    string
	Cause   string  // what it turned out to be; empty: open
	How     string  // how like it is, in words
	Near    float64 // 1 is the same in everything, 0 no more than any case
	Because string
}

// View is the screen.
type View struct {
	// OnOpen opens a case; OnCompare puts it beside the open one.
	OnOpen, OnCompare func(id string)

	tally   *kit.Prose
	list    *fyne.Container
	content fyne.CanvasObject
}

// New makes the screen.
func New() *View {
	v := &View{tally: kit.Paragraphs(), list: container.NewVBox()}
	v.content = container.NewVScroll(container.NewPadded(container.NewVBox(kit.Heading(kit.L("window.alike.title")), v.tally, v.list)))
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show paints what was found, the nearest first; tally says what they turned out to be.
func (v *View) Show(tally string, found []Case) {
	kit.SetParagraphs(v.tally, kit.Span{Text: tally, Small: true, Color: theme.ColorNamePlaceHolder})
	v.list.RemoveAll()
	for _, c := range found {
		v.list.Add(v.row(c))
		v.list.Add(widget.NewSeparator())
	}
	v.list.Refresh()
}

func (v *View) row(c Case) fyne.CanvasObject {
	vehicle := c.Vehicle
	if c.When != "" {
		vehicle += " · " + c.When
	}
	cause := kit.Span{Text: c.Cause, Bold: true}
	if c.Cause == "" {
		cause.Text, cause.Color = kit.L("window.alike.still-open"), theme.ColorNamePrimary
	}
	what := kit.Paragraphs(kit.Span{Text: c.Title, Bold: true}, kit.Span{Text: vehicle, Small: true, Color: theme.ColorNamePlaceHolder}, cause)
	near := kit.NewMeter()
	near.Put(c.Near)
	because := kit.Paragraphs(kit.Span{Text: c.Because, Small: true})
	open := kit.NewButton(kit.L("window.alike.open-case"), func() { tell(v.OnOpen, c.ID) })
	beside := kit.NewButton(kit.L("window.alike.compare"), func() { tell(v.OnCompare, c.ID) })
	return container.NewBorder(nil, nil, nil, container.NewVBox(open, beside),
		container.New(kit.Shares{330, 130, 400}, what, container.NewVBox(container.New(kit.Tight{More: 2}, kit.Small(c.How), kit.InLine(near))), because))
}

func tell(do func(string), id string) {
	if do != nil {
		do(id)
	}
}
