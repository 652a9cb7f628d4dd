package report

import (
	"io"
	"strconv"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// The styles of the customer's page, larger than the shop's.
var (
	bigStyle    = style{19, true, drawing.Text}
	boxHead     = style{11, true, drawing.Text}
	plainStyle  = style{10.2, false, drawing.Text}
	valueStyle  = style{10.2, true, drawing.Text}
	warnStyle   = style{12.5, true, drawing.ActText}
	columnStyle = style{9, true, drawing.Soft}
)

// writeCustomer writes one page in plain words: what was wrong, what was done,
// how it is now, with the loop before and after, and what is dangerous. What
// has no room on it is cut, and seen to be.
func writeCustomer(w io.Writer, m Material, o Options) error {
	made, changed := dates(m.Case)
	p, err := newPaper(o, about{title: customerTitle(m.Case), subject: say.Of("customer.subject"), foot: say.Of("customer.defer"), made: made, changed: changed})
	if err != nil {
		return err
	}
	c := customer{paper: p, m: m, c: m.Case, f: m.Found, pair: m.pair(), loop: layout(m.Case)}
	c.write()
	return p.write(w)
}

// customer is a customer's page on its way to the paper.
type customer struct {
	*paper
	m    Material
	c    *cases.Case
	f    evidence.Findings
	pair pair
	loop *diagram.Loop // nil: not known
}

// write puts down what stands above and below the drawing first, to know what
// room is left for it.
func (c *customer) write() {
	c.shopHead(c.m.Shop, c.c.Opened)
	c.big(c.by.Say(customerTitle(c.c)))
	c.paragraph(c.vehicleLine(), softStyle)
	c.y += 8
	c.three()
	rows := c.spots()
	below := c.tableHeight(rows) + c.watchHeight() + c.dangerHeight()
	if c.loop != nil && len(rows) > 0 {
		c.pictures(rows, c.bottom()-c.y-below-4)
	}
	c.table(rows)
	c.watch()
	c.danger()
}

// customerTitle is the cause in one plain sentence.
func customerTitle(c *cases.Case) say.Text {
	if c.Verdict.Cause == "" {
		return say.Of("customer.title.open")
	}
	return say.Of("customer.title." + string(c.Verdict.Cause))
}

// big is the title, of two lines at most.
func (c *customer) big(text string) {
	c.font(headStyle)
	c.pdf.Bookmark(c.clean(text, headStyle), 0, c.y)
	c.flow(margin, c.cut(text, c.inner(), bigStyle, 2), bigStyle)
}

// cut is a text in at most so many lines; a mark shows that more was there.
func (p *paper) cut(text string, width float64, s style, most int) []string {
	lines := p.lines(text, width, s)
	if len(lines) <= most {
		return lines
	}
	last := []rune(lines[most-1])
	for len(last) > 0 && p.measure(string(last)+" …", s) > width {
		last = last[:len(last)-1]
	}
	return append(lines[:most-1:most-1], strings.TrimRight(string(last), " ")+" …")
}

func (c *customer) vehicleLine() string {
	v := c.c.Vehicle
	odometer := ""
	if v.OdometerKm != nil {
		odometer = c.by.Units.DistUnit(*v.OdometerKm)
	}
	year := ""
	if v.Year != nil {
		year = strconv.Itoa(*v.Year)
	}
	line := join("  ·  ", join(" ", v.Make, v.Model, v.Engine), year, odometer, c.c.Customer.Name, day(c.c.Opened))
	return strings.Join(c.cut(line, c.inner(), softStyle, 1), "")
}

// box is one of the three.
type box struct {
	head, text string
	sign       drawing.Shape
	fill, edge drawing.Role
}

// first is what was wrong; it is no alarm where nothing was, or isn't known yet.
func (c *customer) first() box {
	b := box{c.by.Of(c.wrongHead()), c.by.Say(c.wrong()), signAct(), drawing.ActGround, drawing.ActText}
	switch c.c.Verdict.Cause {
	case cases.Healthy:
		b.sign, b.fill, b.edge = signFine(), drawing.FineGround, drawing.FineText
	case "":
		b.sign, b.fill, b.edge = signLook(), drawing.LookGround, drawing.LookText
	}
	return b
}

// last is how it is now.
func (c *customer) last() box {
	sign, fill, edge := c.mood()
	return box{c.by.Of("customer.is-now"), c.by.Say(c.now()), sign, fill, edge}
}

// three are the three boxes side by side, as high as the fullest.
func (c *customer) three() {
	const gap, pad, most = 10, 9, 9
	width := (c.inner() - 2*gap) / 3
	boxes := []box{
		c.first(),
		{c.by.Of("customer.we-did"), c.by.Say(c.did()), signNote(), drawing.NoteGround, drawing.NoteText},
		c.last(),
	}
	high := 0
	lines := make([][]string, len(boxes))
	for i, b := range boxes {
		lines[i] = c.cut(b.text, width-2*pad, plainStyle, most)
		high = max(high, len(lines[i]))
	}
	height := 2*pad + boxHead.lead() + 4 + float64(high)*plainStyle.lead()
	for i, b := range boxes {
		x := margin + float64(i)*(width+gap)
		c.paint(x, c.y, 1, drawing.Rect{Box: diagram.Box{0, 0, width, height}, Corner: 6, Fill: drawing.In(b.fill), Stroke: drawing.In(b.edge), StrokeWidth: 1})
		c.paint(x+pad, c.y+pad+1, 1, b.sign)
		c.put(x+pad+17, c.y+pad, b.head, boxHead)
		for j, line := range lines[i] {
			c.put(x+pad, c.y+pad+boxHead.lead()+4+float64(j)*plainStyle.lead(), line, plainStyle)
		}
	}
	c.y += height + 10
}
