package drawing

import "loopbook/diagram"

// pointFullC is the end of every point's bar, so that all compare.
const pointFullC = float64(ScaleHighC)

// point draws an entry's block: the thin line to its hose, the label, the box,
// the bar and the range.
func (d *drafter) point(p diagram.PointAt) {
	s := d.state.Points[p.Point]
	x, y := p.Entry[0], p.Entry[1]
	box := diagram.Box{x, y + boxTop, diagram.EntryWidth, boxHeight}
	d.tie(p.Anchor, diagram.Box{x, y, diagram.EntryWidth, diagram.EntryHeight}, 1, 2.5)
	d.label(x, y+7, d.state.By.Of("drawing.point."+string(p.Point)), labelSize, false, Soft, Start)
	d.box(box, s)
	d.bar(diagram.Box{x, y + barTop, diagram.EntryWidth, barHeight}, asFloat(s.LowC), asFloat(s.HighC), asFloat(s.TrueC), pointFullC, s.Mark == OutOfRange)
	d.rangeText(x, y+diagram.EntryHeight-7, s)
	d.entries = append(d.entries, Entry{
		Point: p.Point, Box: box,
		Field: diagram.Box{box[0] + 3, box[1] + 1, fieldWidth, box[3] - 2},
	})
}

// tie is the thin line from a block to a dot on the hose, level or upright where
// it can be.
func (d *drafter) tie(to diagram.XY, b diagram.Box, width, dot float64) {
	from := diagram.XY{min(max(to[0], b[0]), b[0]+b[2]), min(max(to[1], b[1]), b[1]+b[3])}
	d.add(Line{From: from, To: to, Stroke: In(PartLine), Width: width}, Disc{Center: to, Radius: dot, Fill: In(PartLine)})
}

func (d *drafter) box(box diagram.Box, s PointState) {
	fill, stroke, width := In(Card), In(Edge), 1.0
	switch {
	case s.Mark == OutOfRange:
		stroke, width = In(ActText), 2.5
	case s.Mark == Invalid:
		fill, stroke, width = In(ActGround), In(ActText), 2.5
	case s.Mark == CantReach:
		fill = In(PartFill)
	case s.Mark == Repeat:
		stroke, width = In(LookText), 2.5
	}
	d.add(Rect{Box: box, Corner: 6, Fill: fill, Stroke: stroke, StrokeWidth: width})
	mid := box[1] + box[3]/2
	if d.text && s.Text != "" && s.Mark != CantReach {
		d.label(box[0]+8, mid, s.Text, readingSize, true, Text, Start)
	}
	if s.Mark == CantReach {
		d.add(Line{From: diagram.XY{box[0] + 8, mid + 7}, To: diagram.XY{box[0] + 15, mid - 7}, Stroke: In(Text), Width: 2})
		d.label(box[0]+22, mid, d.state.By.Of("drawing.cant-reach"), labelSize, false, Text, Start)
		return
	}
	d.label(box[0]+68, mid, d.state.Unit, labelSize, false, Soft, Start)
	d.sign(diagram.XY{box[0] + box[2] - 13, mid}, s.Mark)
}

func (d *drafter) sign(at diagram.XY, m Mark) {
	switch m {
	case OutOfRange:
		d.add(Wedge{Center: diagram.XY{at[0], at[1] + 2}, Radius: 8.5, Toward: Up, Fill: In(ActSign), Stroke: In(ActText), StrokeWidth: 1})
	case Invalid:
		d.cross(at)
	case Repeat:
		d.add(Disc{Center: at, Radius: 6.5, Stroke: In(LookText), StrokeWidth: 2},
			Wedge{Center: diagram.XY{at[0] + 2, at[1] - 6.5}, Radius: 5, Toward: Right, Fill: In(LookText)})
	}
}

func (d *drafter) cross(at diagram.XY) {
	const r = 5
	d.add(Line{From: diagram.XY{at[0] - r, at[1] - r}, To: diagram.XY{at[0] + r, at[1] + r}, Stroke: In(ActText), Width: 2.5},
		Line{From: diagram.XY{at[0] - r, at[1] + r}, To: diagram.XY{at[0] + r, at[1] - r}, Stroke: In(ActText), Width: 2.5})
}

// bar is the scale from 0 to full: the thick part is what is expected, a tick
// (in range) or a pin with a head (out of it) is what was measured.
func (d *drafter) bar(b diagram.Box, low, high, value *float64, full float64, out bool) {
	place := func(v float64) float64 { return b[0] + b[2]*max(0, min(1, v/full)) }
	mid := b[1] + b[3]/2
	d.add(Rect{Box: b, Corner: b[3] / 2, Fill: In(Bar)})
	if low != nil && high != nil {
		from, to := place(*low), place(*high)
		d.add(Rect{Box: diagram.Box{from, mid - 3.5, max(4, to-from), 7}, Corner: 2, Fill: In(Expected)})
	}
	if value == nil {
		return
	}
	x := place(*value)
	if out {
		d.add(Line{From: diagram.XY{x, mid - 5.5}, To: diagram.XY{x, mid + 5.5}, Stroke: In(ActText), Width: 2},
			Disc{Center: diagram.XY{x, mid}, Radius: 4.5, Fill: In(ActSign), Stroke: In(ActText), StrokeWidth: 1.5})
		return
	}
	d.add(Line{From: diagram.XY{x, mid - 5}, To: diagram.XY{x, mid + 5}, Stroke: In(Text), Width: 3})
}

func (d *drafter) rangeText(x, y float64, s PointState) {
	d.label(x, y, s.Range, labelSize, false, Soft, Start)
	ink, bold := Soft, false
	switch s.Mark {
	case OutOfRange, Invalid:
		ink, bold = ActText, s.Range == ""
	case Repeat:
		ink = LookText
	}
	if s.Range == "" {
		d.label(x, y, s.Note, labelSize, bold, ink, Start)
		return
	}
	d.label(min(x+diagram.EntryWidth+overhang(s.Range, s.Note), d.loop.Width), y, s.Note, labelSize, bold, ink, End)
}

// overhang is how far a note stands out of its block for the range to have its room: as little
// as it must, since the next block's range may stand there.
func overhang(words ...string) float64 {
	const perLetter, between, most = 7, 4, 12
	letters := 0
	for _, w := range words {
		letters += len([]rune(w))
	}
	return max(0, min(most, perLetter*float64(letters)+between-diagram.EntryWidth))
}

func asFloat[T ~float64](v *T) *float64 {
	if v == nil {
		return nil
	}
	n := float64(*v)
	return &n
}
