package report

import (
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// panel is one of the drawings with its head.
type panel struct {
	key   string
	round int
	after bool // the repair
	mood
}

// sides are the two of a repair.
type sides[T any] struct{ before, after T }

// of is the side that a panel is of.
func (s sides[T]) of(p panel) T {
	if p.after {
		return s.after
	}
	return s.before
}

const underPictures = 6

// pictures draw the loop before and after the repair side by side, or once
// where it was measured once, in what height is left for them and the scale.
func (c *customer) pictures(rows []spot, height float64) {
	const gap, pad, least = 10, 8, 140
	height -= underPictures + scaleHeight()
	plain, err := c.loop.Plain()
	if err != nil || height < least {
		return
	}
	panels := c.panels()
	width := (c.inner() - gap) / 2
	height = min(height, width*c.plainDrawing(panels[0], plain, rows).Height/plain.Width+boxHead.lead()+2*pad)
	x := margin + (c.inner()-float64(len(panels))*width-float64(len(panels)-1)*gap)/2
	for _, p := range panels {
		c.panel(p, plain, rows, x, width, height)
		x += width + gap
	}
	c.y += height + underPictures
	c.scale()
}

// panels are the stages that anything was measured at to draw.
func (c *customer) panels() []panel { return c.panelsOf(c.pair.before >= 0, c.pair.after >= 0) }

// panelsOf are those of the stages that there is something of.
func (c *customer) panelsOf(before, after bool) []panel {
	switch {
	case before && after:
		return []panel{c.beforePanel(), c.afterPanel()}
	case after:
		return []panel{c.afterPanel()}
	}
	return []panel{c.beforePanel()}
}

// beforePanel is how the car came, and is still where nothing was done.
func (c *customer) beforePanel() panel {
	switch {
	case c.measuredAfter():
		return panel{"before", c.pair.before, false, moodAct()}
	case !c.worked() || c.state() == healthy:
		return panel{"now-shown", c.pair.before, false, c.moodCame()}
	}
	return panel{"before", c.pair.before, false, c.moodCame()}
}

func (c *customer) afterPanel() panel { return panel{"after", c.pair.after, true, c.moodNow()} }

func (c *customer) panel(p panel, plain *diagram.Loop, rows []spot, x, width, height float64) {
	const pad = 8
	c.paint(x, c.y, 1, drawing.Rect{Box: diagram.Box{0, 0, width, height}, Corner: 6, Fill: drawing.In(drawing.Card), Stroke: drawing.In(p.edge), StrokeWidth: 1})
	c.paint(x+pad, c.y+pad+1, 1, p.sign)
	c.put(x+pad+17, c.y+pad, c.by.Of("customer."+p.key), boxHead)
	when := c.by.Say(c.c.Rounds[p.round].Title())
	left := x + pad + 17 + c.measure(c.by.Of("customer."+p.key), boxHead) + 12
	if _, twoDays := c.outside(); twoDays { // where there is room beside the round's name
		if both := join(", ", c.by.Of("customer.outside", *c.c.Ambient(p.round)), when); len(c.lines(both, x+width-pad-left, softStyle)) == 1 {
			when = both
		}
	}
	line := c.cutLine(when, x+width-pad-left, softStyle)
	c.put(x+width-pad-c.measure(line, softStyle), c.y+pad+2, line, softStyle)

	d := c.plainDrawing(p, plain, rows)
	scale := min((width-2*pad)/d.Width, (height-boxHead.lead()-2*pad)/d.Height)
	c.paint(x+(width-d.Width*scale)/2, c.y+pad+boxHead.lead(), scale, d.Shapes...)
}

func (c *customer) plainDrawing(p panel, plain *diagram.Loop, rows []spot) drawing.Picture {
	return drawing.DrawPlain(plain, picture.State(c.loop, c.c, c.f, p.round, c.by), c.drawn(p, plain, rows))
}

// drawn are the boxes on a drawing: it has no place for the cabin's air.
func (c *customer) drawn(p panel, plain *diagram.Loop, rows []spot) []drawing.Spot {
	at := map[string]diagram.Point{"customer.spot.engine": diagram.Housing, "customer.spot.upper": diagram.RadIn, "customer.spot.lower": diagram.RadOut, "customer.spot.heater": diagram.HeaterIn}
	if plain.Thermostat == diagram.Inlet {
		at["customer.spot.engine"] = diagram.EngineOut
	}
	var out []drawing.Spot
	for _, row := range rows {
		if s := row.of(p); s.c != nil && at[row.label.Key()] != "" {
			out = append(out, drawing.Spot{Point: at[row.label.Key()], Label: c.by.Say(row.label), Text: c.by.Say(say.Value(*s.c)), Out: s.alarms()})
		}
	}
	return out
}

// scale explains the hoses' colours.
func (c *customer) scale() {
	const width, steps = 150, 12
	x := margin + c.measure(c.by.Of("customer.colour"), softStyle) + 10
	c.put(margin, c.y, c.by.Of("customer.colour"), softStyle)
	low, high := c.by.Units.TempUnit(drawing.ScaleLowC), c.by.Units.TempUnit(drawing.ScaleHighC)
	c.put(x, c.y, low, softStyle)
	x += c.measure(low, softStyle) + 6
	step := (drawing.ScaleHighC - drawing.ScaleLowC) / steps
	for i := 0; i < steps; i++ {
		from := drawing.ScaleLowC + step*diagram.Celsius(i)
		left := float64(i) * width / steps // each reaches under the next, so that no seam shows
		c.paint(x, c.y, 1, drawing.Band{Box: diagram.Box{left, 2, min(width/steps+1, width-left), 7}, Start: drawing.Heat(from), End: drawing.Heat(from + step)})
	}
	c.put(x+width+6, c.y, high, softStyle)
	c.y += scaleHeight()
}

func scaleHeight() float64 { return softStyle.lead() + 6 }
