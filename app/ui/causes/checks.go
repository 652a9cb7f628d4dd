package causes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram/drawing"
)

func checksHead() fyne.CanvasObject {
	return container.New(kit.Tight{More: 4}, kit.Heading(kit.L("window.causes.next")), kit.Small(kit.L("window.causes.next-order")))
}

func (v *View) showChecks() {
	v.checks.RemoveAll()
	for _, c := range v.data.Checks {
		v.checks.Add(v.checkCard(c))
	}
	if len(v.data.Causes) == 0 {
		return
	}
	closing := kit.L("check.maker-first")
	if len(v.data.Checks) == 0 {
		closing = kit.L("window.causes.nothing-left") + " " + closing
	}
	v.checks.Add(kit.Paragraphs(kit.Span{Text: closing, Small: true, Color: theme.ColorNamePlaceHolder}))
}

func (v *View) checkCard(c Check) fyne.CanvasObject {
	begin := kit.NewButton(kit.L("window.causes.begin"), func() { v.OnBegin(c.Check, c.Point) }, func() {})
	begin.Icon, begin.IconPlacement, begin.Importance = theme.NavigateNextIcon(), widget.ButtonIconTrailingText, widget.LowImportance
	lines := []fyne.CanvasObject{
		container.NewBorder(nil, nil, nil, begin, kit.Paragraphs(kit.Span{Text: c.Title, Bold: true})),
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
	return kit.On(kit.NewGround(drawing.Card, drawing.Edge, 6), container.New(kit.Tight{}, lines...))
}
