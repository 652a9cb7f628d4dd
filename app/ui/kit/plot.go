package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/report/chart"
)

// Plot is a chart with its name and buttons that save it.
type Plot struct {
	Content fyne.CanvasObject

	view *ChartView
	over *widget.Label
}

// Saver writes a chart as "png" or "svg" under a name, and says where it is or
// what went wrong.
type Saver func(c chart.Chart, name, kind string)

// NewPlot is an empty chart, hidden until one is drawn.
func NewPlot(title string, save Saver) *Plot {
	p := &Plot{view: NewChartView(), over: Small(title)}
	button := func(kind string) fyne.CanvasObject {
		return NewQuiet(L("window.plot."+kind), theme.DocumentSaveIcon(), func() { save(p.view.chart, title, kind) })
	}
	bar := container.NewBorder(nil, nil, nil, container.NewHBox(button("png"), button("svg")), p.over)
	p.Content = container.NewBorder(bar, nil, nil, nil, p.view)
	p.Content.Hide()
	return p
}

// Say puts other words over the chart than its name, or none, where the name stands above already.
func (p *Plot) Say(words string) { p.over.SetText(words) }

// Draw shows a chart; nil hides all.
func (p *Plot) Draw(c chart.Chart) {
	if c == nil {
		p.Content.Hide()
		return
	}
	p.view.Draw(c)
	p.Content.Show()
}
