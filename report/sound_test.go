package report_test

import (
	"encoding/xml"
	"strings"
	"testing"
)

// sound holds a PDF to other people's readers.
func sound(t *testing.T, where string, pdf []byte) {
	t.Helper()
	if out := tool(t, pdf, "qpdf", "--check", "FILE"); strings.Contains(out, "WARNING") {
		t.Errorf("%s: %s", where, out)
	}
	for _, line := range strings.Split(strings.TrimSpace(tool(t, pdf, "pdffonts", "FILE")), "\n")[2:] {
		if f := strings.Fields(line); len(f) < 5 || f[len(f)-5] != "yes" {
			t.Errorf("%s: a font isn't embedded: %s", where, line)
		}
	}
	for i, p := range boxes(t, pdf).Pages {
		right := 0.0 // where the page's number ends
		for _, w := range p.Words {
			if w.YMin > p.Height-58 {
				right = max(right, w.XMax)
			}
			if w.XMin < 41.5 || w.XMax > p.Width-41.5 || w.YMin < 41 || w.YMax > p.Height-41.5 {
				t.Errorf("%s, page %d: %q lies at %.0f to %.0f, %.0f to %.0f: outside the margins of 42", where, i+1, w.Text, w.XMin, w.XMax, w.YMin, w.YMax)
				break
			}
		}
		if right < p.Width-43 {
			t.Errorf("%s, page %d: the number ends at %.1f of %.1f", where, i+1, right, p.Width-42)
		}
		if last := p.last(); last.heads() {
			t.Errorf("%s, page %d: the heading %q… ends the page", where, i+1, last.Text)
		}
	}
}

// last is the word that begins the last line above the foot.
func (p boxedPage) last() (out boxedWord) {
	for _, w := range p.Words {
		if w.YMin < p.Height-58 && (w.YMax > out.YMax+1 || w.YMax > out.YMax-1 && w.XMin < out.XMin) {
			out = w
		}
	}
	return out
}

// heads reports whether a word begins a heading: at the margin, larger than the
// text. A box is 1.16 times as high as its font; what stands upright is higher.
func (w boxedWord) heads() bool {
	size := (w.YMax - w.YMin) / 1.16
	return w.XMin < 43 && size > 9.5 && size < 20
}

type boxed struct {
	Pages []boxedPage `xml:"body>doc>page"`
}

type boxedPage struct {
	Width  float64     `xml:"width,attr"`
	Height float64     `xml:"height,attr"`
	Words  []boxedWord `xml:"word"`
}

type boxedWord struct {
	XMin float64 `xml:"xMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMin float64 `xml:"yMin,attr"`
	YMax float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

func boxes(t *testing.T, pdf []byte) (b boxed) {
	t.Helper()
	text := tool(t, pdf, "pdftotext", "-bbox", "FILE", "-")
	d := xml.NewDecoder(strings.NewReader(text))
	d.Strict, d.Entity = false, xml.HTMLEntity
	if err := d.Decode(&b); err != nil {
		t.Fatal(err)
	}
	if len(b.Pages) == 0 || len(b.Pages[0].Words) == 0 {
		t.Fatal("no words found")
	}
	return b
}
