package report

import "loopbook/diagram/drawing"

// flow writes lines from the cursor down, over as many pages as they take. Neither
// a first line is left alone at the foot of a page nor a last one at the top.
func (p *paper) flow(x float64, lines []string, s style) {
	p.need(s.start(len(lines)))
	for i, line := range lines {
		left := 1
		if i == len(lines)-2 {
			left = 2
		}
		p.need(float64(left) * s.lead())
		p.put(x, p.y, line, s)
		p.y += s.lead()
	}
}

// start is the height that the first of so many lines go over to the next page for:
// three or fewer stay together.
func (s style) start(lines int) float64 {
	if lines > 3 {
		lines = 2
	}
	return float64(lines) * s.lead()
}

// paragraph writes a text over the page's width.
func (p *paper) paragraph(text string, s style) {
	p.flow(margin, p.lines(text, p.inner(), s), s)
}

// linesHeight is what texts of a style take over the page's width, as paragraphs
// or, but for a line now and then, as bullets.
func (p *paper) linesHeight(s style, texts ...string) float64 {
	h := 0.0
	for _, t := range texts {
		h += float64(len(p.lines(t, p.inner()-bulletIndent, s))) * s.lead()
	}
	return h
}

// Room over a section's heading, and under it with its line.
const (
	headSpace = 13
	headRule  = 6
)

// heading writes a section's title and enters it among the bookmarks. It
// stays with the next keep points of what follows.
func (p *paper) heading(text string, keep float64) {
	lines := p.lines(text, p.inner(), headStyle)
	p.space(headSpace)
	p.need(float64(len(lines))*headStyle.lead() + headRule + keep)
	p.font(headStyle)
	p.pdf.Bookmark(p.clean(text, headStyle), 0, p.y)
	p.flow(margin, lines, headStyle)
	p.rule(margin, p.y+1, p.inner(), drawing.PartLine)
	p.y += headRule
}

// subheading writes the title of a part of a section.
func (p *paper) subheading(text string, keep float64) {
	lines := p.lines(text, p.inner(), subStyle)
	p.space(7)
	p.need(float64(len(lines))*subStyle.lead() + 3 + keep)
	p.flow(margin, lines, subStyle)
	p.y += 3
}

// bulletIndent is of a list's texts.
const bulletIndent = 10

// bullets writes texts as a list.
func (p *paper) bullets(x float64, texts []string, s style) {
	for _, t := range texts {
		lines := p.lines(t, p.width-margin-x-bulletIndent, s)
		p.need(s.start(len(lines)))
		p.put(x, p.y, "–", s)
		p.flow(x+bulletIndent, lines, s)
	}
}
