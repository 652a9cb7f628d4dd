package causes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// showReasons lists what speaks for the chosen cause, then what against it,
// each with its weight: filled bars for, outlined against.
func (v *View) showReasons() {
	v.reasons.RemoveAll()
	v.side(kit.L("window.causes.for"), v.data.For, false)
	v.side(kit.L("window.causes.against"), v.data.Against, true)
	if len(v.data.For)+len(v.data.Against) == 0 && len(v.data.Causes) > 0 {
		v.reasons.Add(kit.Paragraphs(kit.Span{Text: kit.L("window.causes.no-reasons"), Color: theme.ColorNamePlaceHolder}))
	}
	v.why.Refresh() // they may be fewer than what was scrolled to
}

func (v *View) side(title string, reasons []Reason, against bool) {
	if len(reasons) == 0 {
		return
	}
	head := kit.Small(title)
	head.TextStyle.Bold = true
	v.reasons.Add(head)
	for _, r := range reasons {
		v.reasons.Add(reasonLine(r, against))
	}
}

func reasonLine(r Reason, against bool) fyne.CanvasObject {
	times := widget.NewLabel(r.Times)
	times.TextStyle.Bold, times.Alignment = true, fyne.TextAlignTrailing
	words := kit.Paragraphs(kit.Span{Text: kit.Capital(r.Words)})
	bar := container.NewVBox(kit.Wide(52, container.NewStack(lineHigh(), kit.NewWeight(r.Weight, against))))
	return container.NewBorder(nil, nil, container.NewHBox(container.NewVBox(kit.Wide(54, times)), bar), nil, words)
}

// lineHigh is as high as a line of text.
func lineHigh() fyne.CanvasObject { return widget.NewLabel("") }
