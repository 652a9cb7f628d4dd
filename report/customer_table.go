package report

import (
	"slices"

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
