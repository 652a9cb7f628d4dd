package report

import (
	"slices"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

func (c *customer) tableHeight(rows []spot) float64 {
	row, checkedToo := c.confirming()
	if len(rows) == 0 && !checkedToo {
		return 0
	}
	n := len(rows) + 1
	if _, ok := c.gap(); ok {
		n++
	}
	checked := 0.0
	if checkedToo {
		checked = c.checkHeight(c.checkLines(row))
	}
	return float64(n)*c.row + checked + float64(len(c.noteLines()))*softStyle.lead() + c.under
}

// table holds each place before against after and what it should be.
func (c *customer) table(rows []spot) {
	if _, ok := c.confirming(); len(rows) == 0 && !ok {
		return
	}
	x := c.columns()
	head := c.by.Of("customer.measured")
	if air, _ := c.outside(); air != "" {
		head += ", " + air
	}
	c.put(margin, c.y, c.cutLine(head, x[0]-margin-6, columnStyle), columnStyle)
	for i, p := range c.stages() {
		c.put(x[2*i], c.y, c.by.Of("customer."+p.key), columnStyle)
		if len(rows) > 0 {
			c.put(x[2*i+1], c.y, c.by.Of("customer.should"), columnStyle)
		}
	}
	c.y += c.row - 2
	for _, row := range rows {
		c.label(row.label, x[0])
		for i, p := range c.stages() {
			c.value(x[2*i], row.of(p))
			c.put(x[2*i+1], c.y, c.should(row.of(p)), c.words)
		}
		c.y += c.row
	}
	c.gapRow(x)
	c.checkRow(x)
	c.rule(margin, c.y-2, c.inner(), drawing.Rule)
	c.flow(margin, c.noteLines(), softStyle)
	c.y += c.under
}

// columns are where the table's columns begin behind the places: for each stage what was measured
// and, beside it, what it should have been then. A range hangs on how warm the engine is and how it
// runs, so that each round has its own.
func (c *customer) columns() [4]float64 {
	at := func(share float64) float64 { return margin + c.inner()*share }
	if len(c.stages()) == 1 {
		return [4]float64{at(0.45), at(0.65)}
	}
	return [4]float64{at(0.35), at(0.49), at(0.68), at(0.82)}
}

// label begins a row.
func (c *customer) label(text say.Text, end float64) {
	c.rule(margin, c.y-2, c.inner(), drawing.Rule)
	c.put(margin, c.y, c.cutLine(c.by.Say(text), end-margin-4, c.words), c.words)
}

// noteLines explain the table's signs and a number that has none, and say where its two sides are of unlike
// conditions.
func (c *customer) noteLines() []string {
	note := c.by.Of("customer.signs")
	if _, ok := c.gap(); ok {
		note += " " + c.by.Of("customer.degrees", c.by.Units.DeltaUnit())
	}
	if slices.ContainsFunc(c.spots(), func(s spot) bool { return s.before.quiet || s.after.quiet }) {
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
	c.label(g.label, x[0])
	for i, d := range []*evidence.Delta{g.before, g.after}[:len(c.stages())] {
		if d == nil {
			c.put(x[2*i]+14, c.y, "–", c.words)
			continue
		}
		text := c.by.Say(say.Value(d.ValueK))
		if should := c.by.Say(plainSpan(*d)); should == "" {
			c.put(x[2*i]+14, c.y, text, c.figures)
		} else {
			c.signed(x[2*i], outBy(d) >= leastOut, text)
			c.put(x[2*i+1], c.y, should, c.words)
		}
	}
	c.y += c.row
}

// plainSpan is what a difference should be, without a lower bound below nothing, which a measurement may fall
// to but a customer can't see the sense of, with what is as good as within it, and clear of what is out.
func plainSpan(d evidence.Delta) say.Text {
	switch {
	case outBy(&d) < leastOut:
		d.ExpectedLowK, d.ExpectedHighK = atMost(d.ExpectedLowK, d.ValueK), atLeast(d.ExpectedHighK, d.ValueK)
	case d.ExpectedHighK != nil && d.ValueK > *d.ExpectedHighK:
		d.ExpectedHighK = atMost(d.ExpectedHighK, d.ValueK-leastApart)
	default:
		d.ExpectedLowK = atLeast(d.ExpectedLowK, d.ValueK+leastApart)
	}
	if d.ExpectedHighK != nil && d.ExpectedLowK != nil && *d.ExpectedLowK <= 0 && d.ValueK >= *d.ExpectedLowK {
		d.ExpectedLowK = nil
	}
	return span(d)
}

// atMost and atLeast move a bound, if there is one, as far as the value.
func atMost(bound *diagram.DeltaK, value diagram.DeltaK) *diagram.DeltaK {
	if bound == nil || *bound <= value {
		return bound
	}
	return &value
}

func atLeast(bound *diagram.DeltaK, value diagram.DeltaK) *diagram.DeltaK {
	if bound == nil || *bound >= value {
		return bound
	}
	return &value
}

// value is a temperature with its sign, where anything is known to be expected; what wasn't
// measured has a dash.
func (c *customer) value(x float64, s shown) {
	if s.c == nil {
		c.put(x+14, c.y, "–", c.words)
		return
	}
	if text := c.by.Say(say.Value(*s.c)); s.quiet || s.should == nil {
		c.put(x+14, c.y, text, c.figures)
	} else {
		c.signed(x, s.out, text)
	}
}

// should is what a place should have shown in its round, or nothing where that isn't known.
func (c *customer) should(s shown) string {
	if s.should == nil {
		return ""
	}
	low, high := s.should.LowC, s.should.HighC
	switch clear := diagram.Celsius(leastApart); {
	case s.out && *s.c > high:
		high = min(high, *s.c-clear)
	case s.out:
		low = max(low, *s.c+clear)
	}
	return c.by.Units.TempRange(low, high) + " " + string(c.by.Units.Temperature)
}

func (c *customer) signed(x float64, out bool, text string) {
	sign := signFine()
	if out {
		sign = signAct()
	}
	c.paint(x, c.y+2, 0.8, sign)
	c.put(x+14, c.y, text, c.figures)
}

// outside is the air at what the table tells. Of two days that differ it has none: each drawing tells its own where it has room.
func (c *customer) outside() (air string, twoDays bool) {
	for _, i := range []int{c.pair.before, c.pair.after} {
		if i < 0 || c.c.Ambient(i) == nil {
			continue
		}
		now := c.by.Of("customer.outside", *c.c.Ambient(i))
		if air != "" && air != now {
			return "", true
		}
		air = now
	}
	return air, false
}

func (c *customer) watchLines() []string {
	text := c.watchFor()
	switch {
	case c.milky():
		text = say.Of("customer.until.oil")
	case c.openHot():
		text = say.Sentences(say.Of("customer.until.hot"), say.Of("customer.until.stop"))
	case c.stillThere() && c.c.Verdict.Cause != "":
		text = c.until()
	}
	return c.lines(c.by.Say(text), c.inner(), c.words)
}

func (c *customer) watchHeight() float64 {
	return boxHead.lead() + 2 + float64(len(c.watchLines()))*c.words.lead() + c.under
}

// watchHead is how long what stands under it holds.
func (c *customer) watchHead() string {
	careful := c.barred()
	switch s := c.state(); {
	case s == unrepaired, s == notFixed, careful && s == open:
		return "customer.until"
	case careful, c.stillThere():
		return "customer.until-sure" // work was done
	}
	return "customer.watch"
}

func (c *customer) watch() {
	c.put(margin, c.y, c.by.Of(c.watchHead()), boxHead)
	c.y += boxHead.lead() + 2
	c.flow(margin, c.watchLines(), c.words)
	c.y += c.under
}

const dangerPad, dangerIndent = 9, 26

func (c *customer) dangerLines() []string {
	text := c.by.Of("customer.danger")
	if c.c.Vehicle.Motive.HighVoltage() {
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
