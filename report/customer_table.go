package report

import (
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

func (c *customer) tableHeight(rows []spot) float64 {
	if len(rows) == 0 {
		return 0
	}
	n := len(rows) + 1
	if _, ok := c.gap(); ok {
		n++
	}
	return float64(n)*c.row + float64(len(c.noteLines()))*softStyle.lead() + 8
}

// table holds each place before against after and what it should be.
func (c *customer) table(rows []spot) {
	if len(rows) == 0 {
		return
	}
	x := [4]float64{margin, margin + c.inner()*0.41, margin + c.inner()*0.58, margin + c.inner()*0.75}
	head := c.by.Of("customer.measured")
	if out := c.outside(); out != "" {
		head += ", " + out
	}
	c.put(x[0], c.y, c.cut(head, x[1]-x[0]-6, columnStyle, 1)[0], columnStyle)
	heads := []string{"before", "after", "should"}
	if c.pair.after < 0 {
		heads[0], heads[1] = "now-shown", ""
	}
	for i, key := range heads {
		if key != "" {
			c.put(x[i+1], c.y, c.by.Of("customer."+key), columnStyle)
		}
	}
	c.y += c.row - 2
	for _, row := range rows {
		c.rule(margin, c.y-2, c.inner(), drawing.Rule)
		c.put(x[0], c.y, c.by.Say(row.label), c.words)
		c.value(x[1], row.before, c.pair.before)
		c.value(x[2], row.after, c.pair.after)
		c.put(x[3], c.y, c.should(row), c.words)
		c.y += c.row
	}
	c.gapRow(x)
	c.rule(margin, c.y-2, c.inner(), drawing.Rule)
	c.flow(margin, c.noteLines(), softStyle)
	c.y += 8
}

// noteLines explain the table's signs and a number that has none, and say where its two sides are of unlike
// conditions.
func (c *customer) noteLines() []string {
	note := c.by.Of("customer.signs")
	if _, ok := c.gap(); ok {
		note += " " + c.by.Of("customer.degrees", c.by.Units.DeltaUnit())
	}
	if slices.ContainsFunc(c.spots(), func(s spot) bool { return s.after.quiet }) {
		note += " " + c.by.Of("customer.quiet")
	}
	if c.pair.before >= 0 && c.pair.after >= 0 && !c.pair.alike {
		note += " " + c.by.Of("customer.unlike")
	}
	return c.lines(note, c.inner(), softStyle)
}

func (c *customer) gapRow(x [4]float64) {
	g, ok := c.gap()
	if !ok {
		return
	}
	c.rule(margin, c.y-2, c.inner(), drawing.Rule)
	c.put(x[0], c.y, c.by.Say(g.label), c.words)
	for i, d := range []*evidence.Delta{g.before, g.after} {
		if d == nil {
			if i == 0 || c.pair.after >= 0 {
				c.put(x[i+1]+14, c.y, "–", c.words)
			}
			continue
		}
		c.signed(x[i+1], outBy(d) >= leastOut, c.by.Say(say.Value(d.ValueK)))
	}
	c.put(x[3], c.y, c.gapShould(g), c.words)
	c.y += c.row
}

// gapShould is what a difference should be, in words: one range that both values agree with, or
// that before and that after.
func (c *customer) gapShould(g gap) string {
	switch {
	case g.after == nil:
		return c.by.Say(span(*g.before))
	case outOf(g.before.ValueK, g.after) == (outBy(g.before) >= leastOut):
		return c.by.Say(span(*g.after))
	case outOf(g.after.ValueK, g.before) == (outBy(g.after) >= leastOut):
		return c.by.Say(span(*g.before))
	}
	return c.ends(g.before) + " → " + c.ends(g.after) + " " + c.by.Units.DeltaUnit()
}

// ends are those of a difference's range, short and without the unit; "…" where one is open.
func (c *customer) ends(d *evidence.Delta) string {
	u := c.by.Units
	short := func(k diagram.DeltaK) string { return units.Short(u.FromK(k), 0) }
	switch low, high := d.ExpectedLowK, d.ExpectedHighK; {
	case low != nil && high != nil:
		return strings.TrimSuffix(u.DeltaRange(*low, *high), " "+u.DeltaUnit())
	case low != nil:
		return short(*low) + "…"
	default:
		return "…" + short(*high)
	}
}

// value is a temperature with its sign; what wasn't measured has a dash, and a
// stage without a round nothing.
func (c *customer) value(x float64, s shown, stage int) {
	if stage < 0 {
		return
	}
	if s.c == nil {
		c.put(x+14, c.y, "–", c.words)
		return
	}
	if text := c.by.Say(say.Value(*s.c)); s.quiet {
		c.put(x+14, c.y, text, c.figures)
	} else {
		c.signed(x, s.out, text)
	}
}

func (c *customer) signed(x float64, out bool, text string) {
	sign := signFine()
	if out {
		sign = signAct()
	}
	c.paint(x, c.y+2, 0.8, sign)
	c.put(x+14, c.y, text, c.figures)
}

func (c *customer) outside() string {
	for _, i := range []int{c.pair.before, c.pair.after} {
		if i >= 0 && c.c.Ambient(i) != nil {
			return c.by.Of("customer.outside", *c.c.Ambient(i))
		}
	}
	return ""
}

func (c *customer) watchLines() []string {
	text := c.watchFor()
	if c.stillThere() {
		text = c.until()
	}
	return c.lines(c.by.Say(text), c.inner(), c.words)
}

func (c *customer) watchHeight() float64 {
	return boxHead.lead() + 2 + float64(len(c.watchLines()))*c.words.lead() + 8
}

func (c *customer) watch() {
	head := "customer.watch"
	if c.stillThere() {
		head = "customer.until"
	}
	c.put(margin, c.y, c.by.Of(head), boxHead)
	c.y += boxHead.lead() + 2
	c.flow(margin, c.watchLines(), c.words)
	c.y += 8
}

const dangerPad, dangerIndent = 9, 26

func (c *customer) dangerLines() []string {
	text := c.by.Of("customer.danger")
	if c.c.Vehicle.Motive == cases.Hybrid {
		text += " " + c.by.Of("customer.voltage")
	}
	return c.lines(text, c.inner()-2*dangerPad, c.words)
}

func (c *customer) dangerHeight() float64 {
	return 2*dangerPad + warnStyle.lead() + 3 + float64(len(c.dangerLines()))*c.words.lead()
}

// danger stands at the foot, where a page is held.
func (c *customer) danger() {
	height := c.dangerHeight()
	c.y = max(c.y, c.bottom()-height-2)
	c.paint(margin, c.y, 1, drawing.Rect{Box: diagram.Box{0, 0, c.inner(), height}, Corner: 6, Fill: drawing.In(drawing.ActGround), Stroke: drawing.In(drawing.ActText), StrokeWidth: 1.4})
	c.paint(margin+dangerPad, c.y+dangerPad, 1.35, signAct())
	c.put(margin+dangerPad+dangerIndent, c.y+dangerPad, c.by.Of("customer.cap"), warnStyle)
	y := c.y + dangerPad + warnStyle.lead() + 3
	for _, line := range c.dangerLines() {
		c.put(margin+dangerPad, y, line, c.words)
		y += c.words.lead()
	}
	c.y += height
}
