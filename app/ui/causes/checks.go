package causes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram/drawing"
)

// Next is what comes after the verdict; the zero one says nothing.
type Next struct {
	Title, Text string
	Button      string // leads there
}

// showHead names the checks; once there is a verdict what follows it comes first, and
// the checks are what might still be done.
func (v *View) showHead() {
	order := kit.Small(v.data.Order)
	n := v.data.Next
	if n.Title == "" {
		v.head.Objects = []fyne.CanvasObject{container.New(kit.Tight{More: 4}, kit.Heading(kit.L("window.causes.next")), order)}
		v.head.Refresh()
		return
	}
	lead := kit.NewButtonWithIcon(n.Button, theme.NavigateNextIcon(), func() { v.OnNext() })
	lead.IconPlacement, lead.Importance = widget.ButtonIconTrailingText, widget.HighImportance
	still := kit.Caption(kit.L("window.causes.still"))
	still.TextStyle.Bold = true
	v.head.Objects = []fyne.CanvasObject{
		kit.Heading(kit.L("window.causes.after-verdict")),
		container.NewPadded(kit.On(kit.NewGround(drawing.Card, drawing.Edge, 6), container.NewVBox(
			kit.Paragraphs(kit.Span{Text: n.Title, Bold: true}, kit.Span{Text: n.Text, Small: true}), container.NewPadded(container.NewHBox(lead))))),
		container.New(kit.Tight{More: 4}, still, order),
	}
	v.head.Refresh()
}

// showChecks lists the checks; unless what follows the verdict is to be done first, the one on top is.
func (v *View) showChecks() {
	v.checks.RemoveAll()
	first := v.data.Next.Title == ""
	add := func(c Check) {
		v.checks.Add(v.checkCard(c, first))
		first = false
	}
	if b := v.data.Beside; b != nil {
		v.checks.Add(kit.Card("look", kit.L("beside.title"), kit.Span{Text: b.Text, Small: true}))
		if b.Check != nil {
			add(*b.Check)
		}
	}
	for _, c := range v.data.Checks {
		add(c)
	}
	defer v.scroll.Refresh() // they may be fewer than what was scrolled to
	if len(v.data.Causes) == 0 {
		return
	}
	closing := kit.L("check.maker-first")
	if len(v.data.Checks) == 0 {
		left := kit.L("window.causes.nothing-left")
		if v.data.Next.Title == "" {
			left += " " + kit.L("window.causes.confirm-first")
		}
		closing = left + " " + closing
	}
	v.checks.Add(kit.Aside(closing))
}

func (v *View) checkCard(c Check, first bool) fyne.CanvasObject {
	begin := kit.NewButton(kit.L("window.causes.begin"), func() { v.OnBegin(c.Check, c.Point) })
	begin.Icon, begin.IconPlacement = theme.NavigateNextIcon(), widget.ButtonIconTrailingText
	if first {
		begin.Importance = widget.HighImportance
	}
	lines := []fyne.CanvasObject{
		container.NewBorder(nil, nil, nil, container.NewVBox(begin), kit.Paragraphs(kit.Span{Text: c.Title, Bold: true})),
		container.NewHBox(kit.Pill(c.Minutes), kit.Caption(c.Worth)),
	}
	text := c.Text
	if c.Needs != "" {
		text = c.Needs + ". " + text
	}
	if text != "" {
		lines = append(lines, kit.Paragraphs(kit.Span{Text: text, Small: true}))
	}
	if c.Caution != "" {
		lines = append(lines, kit.Signed("act", kit.Paragraphs(kit.Span{Text: c.Caution, Small: true, Color: theme.ColorNameError})))
	}
	card := kit.On(kit.NewGround(drawing.Card, drawing.Edge, 6), container.New(kit.Tight{}, lines...))
	begin.Of = card
	return card
}
