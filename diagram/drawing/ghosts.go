package drawing

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Ghost is what a cause would show at a point, beside what was measured.
type Ghost struct {
	Measured string // "": nothing, or nothing to judge by
	Would    string // a range; "": the cause says nothing of this point
	Match    Match
}

// Match says whether what was measured is what the cause would show.
type Match int

// The matches. Each has its own sign.
const (
	NotCompared Match = iota
	Agrees            // tick
	Differs           // diamond
)

// Of the text and of the lines to the hoses: the drawing stands in little room,
// where the text must still come out at 13 points.
const (
	ghostSize = 20
	boldLine  = 1.5
	boldDot   = 4
)

// A ghost's two pills fill the block of the point's entry.
const (
	pillHeight  = 34
	pillGap     = diagram.EntryHeight - 2*pillHeight
	filledWidth = 84 // leaves room for the sign
)

// DrawGhosts makes the picture of the layout with the readings of its state
// and what a cause would show at each point.
func DrawGhosts(l *diagram.Loop, s State, ghosts map[diagram.Point]Ghost) Picture {
	d := drafter{loop: l, state: s}
	d.body()
	d.wordless()
	for _, p := range l.Points {
		if g := ghosts[p.Point]; g.Measured != "" || g.Would != "" {
			d.ghost(p, g)
		}
	}
	return Picture{Width: l.Width, Height: l.Height, Shapes: d.shapes}
}

// wordless takes the parts' words off, which would come out too small, and
// names the engine alone.
func (d *drafter) wordless() {
	kept := d.shapes[:0]
	for _, s := range d.shapes {
		if _, word := s.(Label); !word {
			kept = append(kept, s)
		}
	}
	d.shapes = kept
	for _, p := range d.loop.Parts {
		if p.Kind.Burns() {
			d.label(p.Box[0]+p.Box[2]/2, p.Box[1]+70, d.name(p.Kind), ghostSize, true, Text, Middle)
		}
	}
}

func (d *drafter) ghost(p diagram.PointAt, g Ghost) {
	x, y := p.Entry[0], p.Entry[1]
	upper, lower := y, y+pillHeight+pillGap
	block := diagram.Box{x, y, diagram.EntryWidth, diagram.EntryHeight}
	switch near := nearer(p, upper, lower); {
	case g.Measured == "":
		block, lower = diagram.Box{x, near, diagram.EntryWidth, pillHeight}, near
	case g.Would == "":
		block, upper = diagram.Box{x, near, filledWidth, pillHeight}, near
	}
	d.tie(p.Anchor, block, boldLine, boldDot)
	if g.Measured != "" {
		d.pill(diagram.Box{x, upper, filledWidth, pillHeight}, g.Measured, true)
		d.match(diagram.XY{x + filledWidth + 15, upper + pillHeight/2}, g.Match)
	}
	if g.Would != "" {
		d.pill(diagram.Box{x, lower, diagram.EntryWidth, pillHeight}, g.Would, false)
	}
}

// nearer is the upper or the lower place, whichever is on the anchor's side.
func nearer(p diagram.PointAt, upper, lower float64) float64 {
	if p.Anchor[1] < p.Entry[1]+diagram.EntryHeight/2 {
		return upper
	}
	return lower
}

// pill is a number on a round ground: filled for what was measured, outlined
// for what would be shown.
func (d *drafter) pill(b diagram.Box, text string, filled bool) {
	fill, ink := In(Card), Text
	if filled {
		fill, ink = In(Text), Paper
	}
	d.add(Rect{Box: b, Corner: 8, Fill: fill, Stroke: In(Text), StrokeWidth: 2})
	d.label(b[0]+b[2]/2, b[1]+b[3]/2, text, ghostSize, filled, ink, Middle)
}

// match is the sign of a comparison.
func (d *drafter) match(at diagram.XY, m Match) {
	d.add(matchSign(at, 1, m)...)
}

func matchSign(at diagram.XY, scale float64, m Match) []Shape {
	by := func(x, y float64) diagram.XY { return diagram.XY{at[0] + x*scale, at[1] + y*scale} }
	switch m {
	case Agrees:
		return []Shape{
			Line{From: by(-8, 0), To: by(-2, 7), Stroke: In(FineText), Width: 4 * scale},
			Line{From: by(-2.5, 7), To: by(9, -7), Stroke: In(FineText), Width: 4 * scale},
		}
	case Differs:
		return []Shape{Rhomb{Center: at, Radius: 11 * scale, Fill: In(LookSign), Stroke: In(LookText), StrokeWidth: 1.5 * scale}}
	}
	return nil
}

// GhostLegend explains the pills and their signs, at the size of usual text.
func GhostLegend(by say.Speaker) (width, height float64, shapes []Shape) {
	return pillLegend(by, by.Of("drawing.measured"), by.Of("drawing.would-show"), "drawing.agrees", "drawing.differs", 254)
}

// PairLegend explains the pills of a drawing whose ghosts are what was measured
// before a repair, under what was measured after it, in a unit.
func PairLegend(by say.Speaker, unit string) (width, height float64, shapes []Shape) {
	return pillLegend(by, by.Of("drawing.after")+", "+unit, by.Of("drawing.before")+", "+unit, "drawing.in-range", "drawing.out-of-range", 264)
}

// pillLegend puts the second sign at a place that leaves room for the first
// one's words.
func pillLegend(by say.Speaker, filled, outlined, agrees, differs string, second float64) (width, height float64, shapes []Shape) {
	const mid = 11
	word := func(x float64, text string, ink Role) Shape {
		return Label{At: diagram.XY{x, mid}, Text: text, Size: labelSize, Ink: In(ink)}
	}
	shapes = []Shape{
		Rect{Box: diagram.Box{0, 1, 74, 20}, Corner: 5, Fill: In(Text)}, word(7, filled, Paper),
		Rect{Box: diagram.Box{82, 1, 84, 20}, Corner: 5, Fill: In(Card), Stroke: In(Text), StrokeWidth: 1.5}, word(89, outlined, Text),
		word(196, by.Of(agrees), Text), word(second+12, by.Of(differs), Text),
	}
	shapes = append(shapes, matchSign(diagram.XY{184, mid}, 0.65, Agrees)...)
	return second + 62, 22, append(shapes, matchSign(diagram.XY{second, mid}, 0.65, Differs)...)
}
