package picture

import (
	"image/color"
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/facescan"
	"loopbook/diagram/say"
	"loopbook/report/chart"
)

// FaceScan is a scan of the core as a heat map, with the places framed that are
// colder than their like. It is false for a check without a grid.
func FaceScan(t *cases.Test, by say.Speaker) (chart.Face, bool) {
	if len(t.ShownC) == 0 || len(t.ShownC[0]) == 0 {
		return chart.Face{}, false
	}
	out := chart.Face{Unit: string(by.Units.Temperature)}
	cold := facescan.Judge(t.ShownC).ColdPlaces
	for i, row := range t.ShownC {
		places := make([]chart.Place, len(row))
		for j, v := range row {
			places[j] = facePlace(v, cold[i][j], by)
			if cold[i][j] {
				out.Words = by.Of("chart.framed-cold")
			}
		}
		out.Rows = append(out.Rows, places)
	}
	return out, true
}

func facePlace(v float64, cold bool, by say.Speaker) chart.Place {
	if math.IsNaN(v) {
		return chart.Place{Value: v, Text: "–", Ink: color.Gray{0x80}}
	}
	ground := drawing.Heat(diagram.Celsius(v))
	return chart.Place{
		Value: v, Text: by.Lang.Decimal(by.Units.Temp(diagram.Celsius(v))),
		Fill: ground.Fixed, Ink: drawing.Over(ground).Fixed, Framed: cold,
	}
}
