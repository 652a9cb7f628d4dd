package checks

import (
	"math"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/facescan"
	"loopbook/diagram/units"
)

// The map's width, and the sizes of a place.
const (
	mapWidth    = 430
	placeMost   = 72
	placeHeight = 34
)

// heatMap draws a face: each place with its number on its colour, the cold
// ones framed and marked with a wedge that points down.
func heatMap(rows [][]float64, u units.Set) drawing.Picture {
	if len(rows) == 0 || len(rows[0]) == 0 {
		return drawing.Picture{Width: mapWidth, Height: 1}
	}
	cold := facescan.Judge(rows).ColdPlaces
	w := min(mapWidth/float64(len(rows[0])), placeMost)
	p := drawing.Picture{Width: mapWidth, Height: placeHeight * float64(len(rows))}
	left := (mapWidth - w*float64(len(rows[0]))) / 2
	for i, row := range rows {
		for j, v := range row {
			box := diagram.Box{left + w*float64(j) + 1, placeHeight*float64(i) + 1, w - 2, placeHeight - 2}
			p.Shapes = append(p.Shapes, place(box, v, cold[i][j], u)...)
		}
	}
	return p
}

func place(box diagram.Box, v float64, cold bool, u units.Set) []drawing.Shape {
	middle := diagram.XY{box[0] + box[2]/2, box[1] + box[3]/2}
	if math.IsNaN(v) {
		return []drawing.Shape{
			drawing.Rect{Box: box, Corner: 3, Stroke: drawing.In(drawing.Rule), StrokeWidth: 1},
			drawing.Label{At: middle, Text: "–", Size: 13, Ink: drawing.In(drawing.Soft), Align: drawing.Middle},
		}
	}
	ground := drawing.Heat(diagram.Celsius(v))
	out := []drawing.Shape{drawing.Rect{Box: box, Corner: 3, Fill: ground}}
	if cold {
		out[0] = drawing.Rect{Box: box, Corner: 3, Fill: ground, Stroke: drawing.In(drawing.ActSign), StrokeWidth: 3}
		if box[2] > 40 {
			out = append(out, drawing.Wedge{Center: diagram.XY{box[0] + box[2] - 10, middle[1]}, Radius: 5, Toward: drawing.Down, Fill: drawing.In(drawing.ActSign), Stroke: drawing.Over(ground), StrokeWidth: 1})
			middle[0] -= 6
		}
	}
	text := placeText(v, u)
	if box[2] < 36 {
		text = placeText(math.Round(v), u)
	}
	return append(out, drawing.Label{At: middle, Text: text, Size: 13, Bold: true, Ink: drawing.Over(ground), Align: drawing.Middle})
}
