package main

import (
	"os"

	"loopbook/app/ui/kit"
	"loopbook/report/chart"
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
		path, err = w.paperPath(" " + fileName(name) + "." + kind)
	}
	if err == nil {
		err = os.WriteFile(path, text, 0o644)
	}
	if err != nil {
		return kit.L("window.plot.not-written", err.Error())
	}
	return kit.L("window.plot.written", path)
}
