// Package charts writes charts of the open case beside its papers, and shows its rounds as one.
package charts

import (
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/app/window/filename"
	"loopbook/diagram"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

// Charts are those of the open case.
type Charts struct{ at bench.Bench }

// New writes and shows charts of what is open at the bench.
func New(at bench.Bench) *Charts { return &Charts{at: at} }

// The size of a chart's file, in points.
const (
	fileWidth  = 720
	fileHeight = 360
)

// Save writes a chart beside the papers, as "png" or "svg", and says where: the path is longer than there is room
// for over a chart.
func (s *Charts) Save(c chart.Chart, name, kind string) {
	draw := chart.PNG
	if kind == "svg" {
		draw = chart.SVG
	}
	text, err := draw(c, chart.Plain(), fileWidth, fileHeight)
	path := ""
	if err == nil {
		path, err = filename.InDocuments(filename.OfCase(s.at.Desk.Case.Title, s.at.Desk.Case.ID, name, "."+kind))
	}
	if err == nil {
		err = library.WriteFile(path, func(f *os.File) error { _, err := f.Write(text); return err })
	}
	says := kit.L("window.plot.written", path)
	if err != nil {
		says = kit.L("window.plot.not-written", err.Error())
	}
	s.at.Ask.Show(s.at.Ask.Notice(kit.Capital(name), says))
}

// ShowRounds shows the rounds' temperatures along the flow, a line for each.
func (s *Charts) ShowRounds() {
	d := s.at.Desk
	s.at.Leave()
	title, size := kit.L("window.plot.rounds"), s.at.Ask.Size()
	var content fyne.CanvasObject = widget.NewLabel(kit.L("window.plot.no-rounds"))
	if l, err := diagram.LoopByID(d.Case.Loop.Layout); err == nil {
		if lines, ok := picture.HoseMap(l, &d.Case, d.Found, d.By()); ok {
			plot := kit.NewPlot(title, s.Save)
			plot.Say("") // it is the dialog's title
			plot.Draw(lines)
			content = kit.Roomy(fyne.NewSize(size.Width*0.8, size.Height*0.7), plot.Content)
		}
	}
	s.at.Ask.Show(s.at.Ask.Look(title, kit.L("window.plot.close"), content))
}
