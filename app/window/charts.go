package window

import (
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/window/filename"
	"loopbook/diagram"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

// The size of a chart's file, in points.
const (
	fileWidth  = 720
	fileHeight = 360
)

// saveChart writes a chart beside the papers, as "png" or "svg", and says where.
func (w *window) saveChart(c chart.Chart, name, kind string) string {
	draw := chart.PNG
	if kind == "svg" {
		draw = chart.SVG
	}
	text, err := draw(c, chart.Plain(), fileWidth, fileHeight)
	path := ""
	if err == nil {
		path, err = filename.InDocuments(filename.OfCase(w.at.Desk.Case.Title, name, "."+kind))
	}
	if err == nil {
		err = os.WriteFile(path, text, 0o644)
	}
	if err != nil {
		return kit.L("window.plot.not-written", err.Error())
	}
	return kit.L("window.plot.written", path)
}

// showRounds shows the rounds' temperatures along the flow, a line for each.
func (w *window) showRounds() {
	d := w.at.Desk
	w.leave()
	title, size := kit.L("window.plot.rounds"), w.window.Canvas().Size()
	var content fyne.CanvasObject = widget.NewLabel(kit.L("window.plot.no-rounds"))
	if l, err := diagram.LoopByID(d.Case.Loop.Layout); err == nil {
		if lines, ok := picture.HoseMap(l, &d.Case, d.Found, d.By()); ok {
			plot := kit.NewPlot(title, w.saveChart)
			plot.Draw(lines)
			content = kit.Roomy(fyne.NewSize(size.Width*0.8, size.Height*0.7), plot.Content)
		}
	}
	w.at.Ask.Show(w.at.Ask.Look(title, kit.L("window.plot.close"), content))
}
