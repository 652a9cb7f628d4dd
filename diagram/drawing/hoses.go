package drawing

import (
	"math"

	"loopbook/diagram"
)

func boreWidth(b diagram.Bore) float64 {
	switch b {
	case diagram.BoreMain:
		return 16
	case diagram.BoreHeater:
		return 12
	case diagram.BoreFeed:
		return 9
	}
	return 7
}

// hose draws the legs, coloured from the reading at one end to the other's,
// and arrows along the flow.
func (d *drafter) hose(h diagram.Hose) {
	w := boreWidth(h.Bore)
	start, end := d.heat(h.Ends[0], h.Ends[1]), d.heat(h.Ends[1], h.Ends[0])
	for i := 1; i < len(h.Path); i++ {
		edge := around(h.Path[i-1], h.Path[i], w/2+edgeWidth) // under all legs, so that none cuts into the next
		d.add(Rect{Box: edge, Corner: w / 2, Fill: In(PipeEdge)})
	}
	whole, done := pathLength(h.Path), 0.0
	for i := 1; i < len(h.Path); i++ {
		a, b := h.Path[i-1], h.Path[i]
		from := blend(start, end, done/whole)
		done += distance(a, b)
		to := blend(start, end, done/whole)
		d.add(leg(a, b, w, from, to))
	}
	for _, corner := range h.Path[1 : len(h.Path)-1] {
		d.add(Disc{Center: corner, Radius: w/2 - 0.5, Fill: blend(start, end, 0.5)})
	}
	d.arrows(h, w, start, end)
}

func leg(a, b diagram.XY, w float64, from, to Ink) Shape {
	band := Band{Box: legBox(a, b, w/2), Start: from, End: to, Vertical: a[0] == b[0]}
	if b[0] < a[0] || b[1] < a[1] {
		band.Start, band.End = to, from
	}
	return band
}

// arrows stand in the middle of each leg that has room: none where nothing
// flows, hollow ones where the flow is in doubt.
func (d *drafter) arrows(h diagram.Hose, w float64, start, end Ink) {
	doubt := d.state.Doubt && h.Cold == diagram.Still && h.Hot == diagram.Forward
	still := h.Cold == diagram.Still && (h.Hot == diagram.Still || d.state.Thermostat == Shut && !doubt)
	for i := 1; i < len(h.Path); i++ {
		a, b := h.Path[i-1], h.Path[i]
		n := distance(a, b)
		if n < 60 || still {
			continue
		}
		places := []float64{0.5}
		if n > 150 {
			places = []float64{0.22, 0.78}
		}
		for _, at := range places {
			ink := Over(blend(start, end, 0.5))
			arrow := Wedge{
				Center: diagram.XY{a[0] + (b[0]-a[0])*at, a[1] + (b[1]-a[1])*at},
				Radius: min(6.5, w*0.42), Toward: way(a, b), Fill: ink,
			}
			if doubt {
				arrow.Fill, arrow.Stroke, arrow.StrokeWidth = Ink{}, ink, 1.5
			}
			d.add(arrow)
		}
	}
}

func way(a, b diagram.XY) Way {
	switch {
	case b[0] > a[0]:
		return Right
	case b[0] < a[0]:
		return Left
	case b[1] < a[1]:
		return Up
	}
	return Down
}

// blend is the ink between two, or the card's where either isn't known.
func blend(a, b Ink, share float64) Ink {
	if a.Role != "" {
		return b
	}
	if b.Role != "" {
		return a
	}
	return Ink{Fixed: mix(a.Fixed, b.Fixed, share)}
}

// legBox is the box of a leg, half a width to each side of it.
func legBox(a, b diagram.XY, half float64) diagram.Box {
	if a[1] == b[1] {
		return diagram.Box{min(a[0], b[0]), a[1] - half, math.Abs(b[0] - a[0]), 2 * half}
	}
	return diagram.Box{a[0] - half, min(a[1], b[1]), 2 * half, math.Abs(b[1] - a[1])}
}

// around is the box that holds both places with a margin.
func around(a, b diagram.XY, margin float64) diagram.Box {
	x, y := min(a[0], b[0])-margin, min(a[1], b[1])-margin
	return diagram.Box{x, y, max(a[0], b[0]) + margin - x, max(a[1], b[1]) + margin - y}
}

func distance(a, b diagram.XY) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

func pathLength(path []diagram.XY) float64 {
	sum := 0.0
	for i := 1; i < len(path); i++ {
		sum += distance(path[i-1], path[i])
	}
	return sum
}
