package report

import (
	"bytes"
	"image/jpeg"
	"strings"
	"time"

	"github.com/jung-kurt/gofpdf"

	"loopbook/diagram/drawing"
)

var shopStyle = style{13, true, drawing.Text}

// shopHead is the shop's name and logo at the left, its address and the day at
// the right, with a line under them. Without a shop there is none.
func (p *paper) shopHead(s Shop, at time.Time) {
	if s.Name == "" && len(s.Logo) == 0 && len(s.lines()) == 0 {
		return
	}
	const height = 30
	x := float64(margin)
	if w := p.logo(s.Logo, x, p.y, height-4); w > 0 {
		x += w + 10
	}
	right := s.lines()
	if d := day(at); d != "" {
		right = append(right, d)
	}
	bottom := p.y + height
	y := p.y
	for _, line := range right[:min(len(right), 5)] {
		line = p.cutLine(line, p.inner()*0.4, softStyle)
		p.put(p.width-margin-p.measure(line, softStyle), y, line, softStyle)
		y += softStyle.lead()
	}
	p.put(x, p.y+6, p.cutLine(s.Name, p.inner()*0.58-(x-margin), shopStyle), shopStyle)
	p.y = max(bottom, y) + 3
	p.rule(margin, p.y, p.inner(), drawing.PartLine)
	p.y += 10
}

func (s Shop) lines() []string {
	var out []string
	for _, line := range strings.Split(s.Address, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// logo places the picture and tells its width; what isn't a JPEG is left out.
func (p *paper) logo(raw []byte, x, y, height float64) (width float64) {
	conf, err := jpeg.DecodeConfig(bytes.NewReader(raw))
	if err != nil || conf.Height == 0 {
		return 0
	}
	width = min(height*float64(conf.Width)/float64(conf.Height), 120)
	o := gofpdf.ImageOptions{ImageType: "JPG"}
	p.pdf.RegisterImageOptionsReader("logo", o, bytes.NewReader(raw))
	p.pdf.ImageOptions("logo", x, y, width, 0, false, o, 0, "")
	return width
}
