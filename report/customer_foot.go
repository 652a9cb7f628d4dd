package report

import (
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

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
