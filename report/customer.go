package report

import (
	"errors"
	"io"
	"strings"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/chart"
)

// The styles of the customer's page, larger than the shop's.
var (
	bigStyle    = style{19, true, drawing.Text}
	boxHead     = style{11, true, drawing.Text}
	warnStyle   = style{12.5, true, drawing.ActText}
	columnStyle = style{9, true, drawing.Soft}
)

// writeCustomer writes one page in plain words: what was wrong, what was done,
// how it is now, with the loop before and after, and what is dangerous. What
// has no room on it is cut, and seen to be.
func writeCustomer(w io.Writer, m Material, o Options) error {
	m = m.withoutBelied()
	p, err := newPaper(m.Case, o, about{title: customerTitle(m), subject: say.Of("customer.subject"), foot: say.Of("customer.defer")})
	if err != nil {
		return err
	}
	c := customer{paper: p, setting: roomy(), m: m, c: m.Case, f: m.Found, pair: m.pair(), loop: layout(m.Case)}
	if err := c.write(); err != nil {
		return err
	}
	return p.write(w)
}

// setting is how large the page's text is set.
type setting struct {
	words, figures style
	row            float64 // the height of a row of the table
	under          float64 // room under a part of the page
	work           int     // lines that what was done may take
}

// The settings: the tight one leaves the drawings more of a short page, a long list of parts less.
func roomy() setting { return setOf(10.2, 18, 8, 12) }
func tight() setting { return setOf(9, 15, 4, 8) }

func setOf(size, row, under float64, work int) setting {
	return setting{style{size, false, drawing.Text}, style{size, true, drawing.Text}, row, under, work}
}

// customer is a customer's page on its way to the paper.
type customer struct {
	*paper
	setting
	m    Material
	c    *cases.Case
	f    evidence.Findings
	pair pair
	loop *diagram.Loop // nil: not known
}

// write puts down what stands above and below the drawing first, to know what
// room is left for it.
func (c *customer) write() error {
	c.shopHead(c.m.Shop, c.c.Opened)
	c.big(c.by.Say(customerTitle(c.m)))
	c.flow(margin, c.vehicleLines(), softStyle)
	c.y += 8
	rows := c.spots()
	drawn := c.loop != nil && len(rows) > 0
	if drawn && c.left(rows) < easilyRead {
		c.setting = tight()
	}
	height := c.left(rows)
	c.three()
	if drawn {
		c.pictures(rows, height)
	} else if err := c.warmUp(height); err != nil && !errors.Is(err, chart.ErrEmpty) {
		return err
	}
	c.table(rows)
	c.watch()
	c.danger()
	return nil
}

// easilyRead is the height that the drawings' words, 6.5 points high, are easily
// read in.
const easilyRead = 190

// left is what height the texts above and below leave for the drawings.
func (c *customer) left(rows []spot) float64 {
	const gap = 4
	_, above := c.boxes()
	return c.bottom() - c.y - above - c.tableHeight(rows) - c.watchHeight() - c.dangerHeight() - gap
}

// customerTitle is the cause in one plain sentence, which is no fact until a check or the repair
// has shown it.
func customerTitle(m Material) say.Text {
	title := say.Of("customer.title." + string(m.Case.Verdict.Cause))
	switch {
	case m.open():
		return say.Of("customer.title.open")
	case m.likely():
		return say.Of("customer.title.likely", title)
	}
	return title
}

// likely reports whether a cause is named that neither a check nor the repair has shown.
func (m Material) likely() bool {
	v, fixed := m.Case.Verdict, m.Proof != nil && m.Proof.Verdict == proof.Fixed
	return v.Cause != "" && v.Cause != cases.Healthy && v.ConfirmedBy == "" && !fixed
}

// big is the title, of two lines at most.
func (c *customer) big(text string) {
	c.font(headStyle)
	c.pdf.Bookmark(c.clean(text, headStyle), 0, c.y)
	c.flow(margin, c.cut(text, c.evenly(text, bigStyle), bigStyle, 2), bigStyle)
}

// evenly is the least width that a text needs no more lines in than in the whole: its last line is then no
// single word.
func (c *customer) evenly(text string, s style) float64 {
	const step = 6
	width, lines := c.inner(), len(c.lines(text, c.inner(), s))
	for lines > 1 && len(c.lines(text, width-step, s)) == lines {
		width -= step
	}
	return width
}

// cut is a text in at most so many lines; a mark shows that more was there. What is cut off are whole words,
// unless there is but one.
func (p *paper) cut(text string, width float64, s style, most int) []string {
	lines := p.lines(text, width, s)
	if len(lines) <= most {
		return lines
	}
	last := lines[most-1]
	for last != "" && p.measure(last+" …", s) > width {
		if blank := strings.LastIndex(last, " "); blank > 0 {
			last = last[:blank]
			continue
		}
		runes := []rune(last)
		last = string(runes[:len(runes)-1])
	}
	return append(lines[:most-1:most-1], strings.TrimRight(last, " ,;")+" …")
}

// cutLine is a text in one line.
func (p *paper) cutLine(text string, width float64, s style) string {
	return p.cut(text, width, s, 1)[0]
}

// vehicleLines say whose car it is. Long names take a second line, so that none pushes the day off.
func (c *customer) vehicleLines() []string {
	v := c.c.Vehicle
	name := func(text string) string { return c.cutLine(text, 0.6*c.inner(), softStyle) }
	line := join("  ·  ", name(join(" ", v.Make, v.Model, v.Engine)), c.by.Say(whole(v.Year)), c.by.Say(distance(v.OdometerKm)), name(c.c.Customer.Name), day(c.c.Opened))
	return c.cut(line, c.inner(), softStyle, 2)
}

// box is one of the three.
type box struct {
	head, text string
	mood
	lines []string // of the text
}

// boxGap and boxPad lie between and in the boxes.
const boxGap, boxPad = 10, 9

func (c *customer) boxWidth() float64 { return (c.inner() - 2*boxGap) / 3 }

// boxes are the three with their lines, and the height that they take together.
func (c *customer) boxes() (list []box, height float64) {
	const most = 12
	list = []box{
		{c.by.Of(c.wrongHead()), c.by.Say(c.wrong()), c.moodCame(), nil},
		{c.by.Of("customer.we-did"), c.by.Say(c.did()), moodNote(), nil},
		{c.by.Of("customer.is-now"), c.by.Say(c.now()), c.moodNow(), nil},
	}
	high := 0
	for i, lines := range []int{most, c.work, most} {
		b := &list[i]
		b.lines = c.cut(b.text, c.boxWidth()-2*boxPad, c.words, lines)
		high = max(high, len(b.lines))
	}
	return list, 2*boxPad + boxHead.lead() + 4 + float64(high)*c.words.lead() + c.underBoxes()
}

func (c *customer) underBoxes() float64 { return c.under + 2 }

// three are the three boxes side by side, as high as the fullest.
func (c *customer) three() {
	width := c.boxWidth()
	list, height := c.boxes()
	for i, b := range list {
		x := margin + float64(i)*(width+boxGap)
		c.paint(x, c.y, 1, drawing.Rect{Box: diagram.Box{0, 0, width, height - c.underBoxes()}, Corner: 6, Fill: drawing.In(b.fill), Stroke: drawing.In(b.edge), StrokeWidth: 1})
		c.paint(x+boxPad, c.y+boxPad+1, 1, b.sign)
		c.put(x+boxPad+17, c.y+boxPad, b.head, boxHead)
		for j, line := range b.lines {
			c.put(x+boxPad, c.y+boxPad+boxHead.lead()+4+float64(j)*c.words.lead(), line, c.words)
		}
	}
	c.y += height
}
