// Package history is the screen of what the notebook's own cases say together. Each
// number on it leads to its cases.
package history

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/report/chart"
)

// Part is a number with its words. A click searches for its cases, or opens its one.
type Part struct {
	Text   string
	Search string
	Case   string // id; empty: Search leads on
}

// Line is a thing with what it turned out to be.
type Line struct {
	Name  Part
	Parts []Part
	Note  string // such as that there are too few
}

// Section is one question with its answer.
type Section struct {
	Title string
	About string
	Chart chart.Chart // nil: none
	Over  string      // the chart: what is seen on it beyond the title
	Lines []Line
	Note  string  // of every line, in the place of their own; empty: each has its own
	Wide  float32 // of the lines' names
}

// Data is the whole screen.
type Data struct {
	Head        string
	Left, Right []Section
}

// View is the screen.
type View struct {
	// OnSearch is called with the search that finds a number's cases.
	OnSearch func(text string)
	// OnOpen is called with the case to open.
	OnOpen func(id string)
	// OnGuess is called to rank the closed cases whose ranking isn't known.
	OnGuess func()

	save        kit.Saver
	head, state *widget.Label
	rank        *kit.Button
	left, right *fyne.Container
	content     fyne.CanvasObject
}

// New makes the screen; save writes a plot to a file.
func New(save kit.Saver, back func()) *View {
	v := &View{save: save, head: kit.Small(""), state: kit.Caption(""), left: container.NewVBox(), right: container.NewVBox()}
	v.rank = kit.NewButton(kit.L("window.history.rank"), func() {
		if v.OnGuess != nil {
			v.OnGuess()
		}
	})
	v.rank.Importance = widget.LowImportance
	home := kit.NewQuiet(kit.L("window.history.back"), theme.NavigateBackIcon(), back)
	title := container.New(kit.Tight{More: 6}, heading(kit.L("window.history.title")), v.head)
	top := container.NewBorder(nil, nil, nil, container.NewHBox(container.NewCenter(v.state), container.NewCenter(v.rank), container.NewCenter(home)), title)
	columns := container.New(kit.Shares{1, 1}, v.left, v.right)
	v.content = kit.Framed(top, nil, nil, nil, container.NewVScroll(container.NewPadded(columns)))
	return v
}

func heading(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName, l.TextStyle.Bold = theme.SizeNameHeadingText, true
	return l
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Tell says how far the ranking is; empty: nothing is under way.
func (v *View) Tell(text string) { v.state.SetText(text) }

// Show paints the history anew.
func (v *View) Show(d Data) {
	v.head.SetText(d.Head)
	v.fill(v.left, d.Left)
	v.fill(v.right, d.Right)
}

func (v *View) fill(column *fyne.Container, sections []Section) {
	column.RemoveAll()
	for _, s := range sections {
		column.Add(v.section(s))
	}
	column.Refresh()
}

func (v *View) section(s Section) fyne.CanvasObject {
	box := container.NewVBox(kit.Heading(s.Title))
	if s.About != "" {
		box.Add(kit.Aside(s.About))
	}
	if s.Note != "" {
		box.Add(kit.Aside(s.Note))
	}
	if s.Chart != nil {
		plot := kit.NewPlot(s.Title, v.save)
		plot.Say(s.Over)
		plot.Draw(s.Chart)
		room := canvas.NewRectangle(color.Transparent)
		room.SetMinSize(fyne.NewSize(0, chartHeight))
		box.Add(container.NewStack(room, plot.Content))
	}
	for _, l := range s.Lines {
		if s.Note != "" {
			l.Note = ""
		}
		box.Add(v.line(l, s.Wide))
	}
	return container.NewPadded(box)
}

// chartHeight leaves a plot room above the slanting names under it.
const chartHeight = 300

func (v *View) line(l Line, wide float32) fyne.CanvasObject {
	parts := container.New(layout.NewRowWrapLayoutWithCustomPadding(0, 0))
	for _, p := range l.Parts {
		parts.Add(v.link(p))
	}
	if l.Note != "" {
		parts.Add(kit.Caption(l.Note))
	}
	if wide == 0 {
		return container.NewVBox(v.link(l.Name), parts)
	}
	return container.NewBorder(nil, nil, container.NewVBox(kit.Wide(wide, v.link(l.Name))), nil, parts)
}

// link is words that lead somewhere, or plain ones.
func (v *View) link(p Part) fyne.CanvasObject {
	if p.Search == "" && p.Case == "" {
		return kit.Caption(p.Text)
	}
	return kit.NewLink(p.Text, func() {
		switch {
		case p.Case != "" && v.OnOpen != nil:
			v.OnOpen(p.Case)
		case p.Case == "" && v.OnSearch != nil:
			v.OnSearch(p.Search)
		}
	})
}
