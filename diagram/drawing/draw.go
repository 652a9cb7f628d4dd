package drawing

import "loopbook/diagram"

// Sizes of the drawing language, in drawing units.
const (
	labelSize   = 13
	readingSize = 18
	nameSize    = 14
	edgeWidth   = 1.5
	boxTop      = 16 // of an entry's box under its label
	boxHeight   = 34
	fieldWidth  = 64 // the part of the box that the number takes
	barTop      = boxTop + boxHeight + 4
	barHeight   = 5
	foot        = 4 // under the lowest words, which would be cut
)

// Draw makes the picture of the layout with its state. With text set the
// numbers are part of the picture; else the surface puts its own fields there.
func Draw(l *diagram.Loop, s State, text bool) Picture {
	d := drafter{loop: l, state: s, text: text}
	d.body()
	for _, p := range l.Points {
		d.point(p)
	}
	for _, delta := range l.Deltas {
		d.delta(delta)
	}
	d.caution()
	d.legend()
	return Picture{Width: l.Width, Height: l.Height + foot, Shapes: d.shapes, Entries: d.entries}
}

// DrawBare makes the picture of the parts and hoses alone.
func DrawBare(l *diagram.Loop) Picture {
	d := drafter{loop: l}
	d.body()
	return Picture{Width: l.Width, Height: l.Height, Shapes: d.shapes}
}

// body is the loop itself, without its readings.
func (d *drafter) body() {
	for _, h := range d.loop.Hoses {
		d.hose(h)
	}
	for _, p := range d.loop.Parts {
		d.part(p)
	}
	for _, c := range d.loop.Captions {
		d.caption(c)
	}
}

// drafter gathers the shapes, those behind first.
type drafter struct {
	loop    *diagram.Loop
	state   State
	text    bool
	shapes  []Shape
	entries []Entry
}

func (d *drafter) add(shapes ...Shape) { d.shapes = append(d.shapes, shapes...) }

func (d *drafter) label(x, y float64, text string, size float64, bold bool, ink Role, align Align) {
	if text != "" {
		d.add(Label{At: diagram.XY{x, y}, Text: text, Size: size, Bold: bold, Ink: In(ink), Align: align})
	}
}

// heat is the ink of a point's temperature, or the card's where none is known.
func (d *drafter) heat(points ...diagram.Point) Ink {
	for _, p := range points {
		if c := d.state.Points[p].TrueC; c != nil {
			return Heat(*c)
		}
	}
	return In(Card)
}
