package drawing

import "loopbook/diagram"

// Spot is a temperature on a plain drawing.
type Spot struct {
	Point diagram.Point
	Label string // a few plain words
	Text  string // the temperature with its unit
	Out   bool   // not as it should be
}

// plainSize of the words: the drawing takes half a page's width, where they
// must still come out at 8 points.
const (
	plainSize = 19
	spotSize  = 24
	spotTop   = 22 // of a spot's box under its label
)

// DrawPlain makes the picture of a plain loop with few temperatures, for
// somebody who isn't of the trade.
func DrawPlain(l *diagram.Loop, s State, spots []Spot) Picture {
	d := drafter{loop: l, state: s}
	d.body()
	d.wordless()
	d.plainWords()
	for _, at := range l.Points {
		for _, spot := range spots {
			if spot.Point == at.Point {
				d.spot(at, spot)
			}
		}
	}
	return Picture{Width: l.Width, Height: d.foot(spots), Shapes: d.shapes}
}

// foot is the lower end of what is drawn: a spot that isn't there leaves no gap.
func (d *drafter) foot(spots []Spot) float64 {
	low := 0.0
	for _, h := range d.loop.Hoses {
		for _, at := range h.Path {
			low = max(low, at[1]+boreWidth(h.Bore)/2+edgeWidth)
		}
	}
	for _, c := range d.loop.Captions {
		low = max(low, c.At[1]+plainSize/2)
	}
	for _, at := range d.loop.Points {
		for _, s := range spots {
			if s.Point == at.Point {
				low = max(low, at.Entry[1]+spotTop+boxHeight+2)
			}
		}
	}
	return low
}

// plainWords name the captions' parts, and say how the thermostat stands.
func (d *drafter) plainWords() {
	for _, c := range d.loop.Captions {
		for _, p := range d.loop.Parts {
			if p.ID != c.Part {
				continue
			}
			align := Middle
			if p.Kind == diagram.Thermostat {
				align = Start
				d.label(c.At[0], c.At[1]+22, d.state.By.Say(d.state.Thermostat.word()), plainSize, false, Text, align)
			}
			d.label(c.At[0], c.At[1], d.name(p.Kind), plainSize, true, Text, align)
		}
	}
}

func (d *drafter) spot(at diagram.PointAt, s Spot) {
	x, y := at.Entry[0], at.Entry[1]
	box := diagram.Box{x, y + spotTop, diagram.EntryWidth, boxHeight}
	d.tie(at.Anchor, diagram.Box{x, y, diagram.EntryWidth, spotTop + boxHeight}, boldLine, boldDot)
	d.label(x, y+10, s.Label, plainSize, false, Text, Start)
	stroke, width := In(Edge), 1.5
	if s.Out {
		stroke, width = In(ActText), 3.0
	}
	d.add(Rect{Box: box, Corner: 6, Fill: In(Card), Stroke: stroke, StrokeWidth: width})
	d.label(box[0]+8, box[1]+box[3]/2, s.Text, spotSize, true, Text, Start)
	if s.Out {
		d.sign(diagram.XY{box[0] + box[2] - 14, box[1] + box[3]/2}, OutOfRange)
	}
}
