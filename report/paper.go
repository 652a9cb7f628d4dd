package report

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/jung-kurt/gofpdf"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// Sizes of a page, in points.
const (
	margin     = 42
	footHeight = 24 // of the line under the text
	family     = "body"
)

// style is how a text looks: its size in points, its weight and its colour.
type style struct {
	size float64
	bold bool
	ink  drawing.Role
}

// The styles of a paper.
var (
	titleStyle  = style{18, true, drawing.Text}
	headStyle   = style{12.5, true, drawing.Text}
	subStyle    = style{10, true, drawing.Text}
	bodyStyle   = style{9, false, drawing.Text}
	strongStyle = style{9, true, drawing.Text}
	smallStyle  = style{8, false, drawing.Text}
	softStyle   = style{8, false, drawing.Soft}
)

// lead is the height of a line.
func (s style) lead() float64 { return s.size * 1.34 }

// paper is a document that is written from the top down. Lengths are points,
// y downwards from the top of the page.
type paper struct {
	pdf           *gofpdf.Fpdf
	plain, bold   glyphs
	palette       drawing.Palette
	by            say.Speaker
	chosen        style // the font that gofpdf has, without its ink
	width, height float64
	y             float64
	foot          string
}

// about says what a document is.
type about struct{ title, subject, foot say.Text }

// newPaper begins a document on a case, in the language and on the paper that o names.
func newPaper(c *cases.Case, o Options, a about) (*paper, error) {
	width, height, err := o.Page.points()
	if err != nil {
		return nil, err
	}
	by, err := o.speaker()
	if err != nil {
		return nil, err
	}
	p := &paper{palette: onWhite(), by: by, width: width, height: height}
	if p.plain, err = readGlyphs(assets.DejaVuSans); err != nil {
		return nil, err
	}
	if p.bold, err = readGlyphs(assets.DejaVuSansBold); err != nil {
		return nil, err
	}
	p.foot = p.clean(by.Say(a.foot), bodyStyle)
	p.pdf = gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "pt", Size: gofpdf.SizeType{Wd: width, Ht: height}})
	p.describe(c, a)
	p.pdf.SetMargins(margin, margin, margin)
	p.pdf.SetCellMargin(0)
	p.pdf.SetAutoPageBreak(false, 0)
	// gofpdf keeps the font's bytes and may write to them.
	p.pdf.AddUTF8FontFromBytes(family, "", bytes.Clone(assets.DejaVuSans))
	p.pdf.AddUTF8FontFromBytes(family, "B", bytes.Clone(assets.DejaVuSansBold))
	p.pdf.SetLineJoinStyle("round")
	p.page()
	return p, p.pdf.Error()
}

// describe gives the document the case's dates, so that the same case makes the same bytes.
func (p *paper) describe(c *cases.Case, a about) {
	made, changed := dates(c)
	p.pdf.SetTitle(p.clean(p.by.Say(a.title), bodyStyle), true)
	p.pdf.SetSubject(p.by.Say(a.subject), true)
	p.pdf.SetCreator("Loopbook", true)
	p.pdf.SetProducer("Loopbook", true)
	p.pdf.SetCreationDate(made.UTC())
	p.pdf.SetModificationDate(changed.UTC())
	p.pdf.SetCatalogSort(true)
	p.pdf.SetCompression(true)
	p.pdf.SetDisplayMode("fullwidth", "OneColumn")
}

// onWhite is the light palette for paper, which is white already.
func onWhite() drawing.Palette {
	p := drawing.Light()
	p[drawing.Paper], p[drawing.Card] = p[drawing.OnAccent], p[drawing.OnAccent]
	return p
}

func (p *paper) inner() float64  { return p.width - 2*margin }
func (p *paper) bottom() float64 { return p.height - margin - footHeight }

// page begins a new page.
func (p *paper) page() {
	p.pdf.AddPage()
	p.chosen = style{} // a page knows no font yet
	p.y = margin
}

// need begins a new page where less than h is left of this one. What is
// higher than a page begins where it is, if that is the top.
func (p *paper) need(h float64) {
	if p.y+h > p.bottom() && p.y > margin {
		p.page()
	}
}

// space leaves room, but none at the top of a page.
func (p *paper) space(h float64) {
	if p.y > margin {
		p.y += h
	}
}

// feet closes every page with the line under the text. That is done last, when
// the number of pages is known.
func (p *paper) feet() {
	y, pages := p.height-margin-15, p.pdf.PageCount()
	for i := 1; i <= pages; i++ {
		p.pdf.SetPage(i)
		p.chosen = style{}
		p.rule(margin, y, p.inner(), drawing.Rule)
		p.put(margin, y+4, p.foot, softStyle)
		number := p.by.Of("paper.page", i, pages)
		p.put(p.width-margin-p.measure(number, softStyle), y+4, number, softStyle)
	}
}

// rule draws a thin level line.
func (p *paper) rule(x, y, width float64, ink drawing.Role) {
	p.stroke(drawing.In(ink), 0.5)
	p.pdf.Line(x, y, x+width, y)
}

// write ends the document.
func (p *paper) write(w io.Writer) error {
	p.feet()
	var out bytes.Buffer
	if err := p.pdf.Output(&out); err != nil {
		return fmt.Errorf("paper: %w", err)
	}
	text, err := withLanguage(out.Bytes(), p.by.Lang)
	if err != nil {
		return err
	}
	_, err = w.Write(text)
	return err
}

var errCatalog = errors.New("paper: no catalog to put the language into")

// withLanguage says which language the document is in and that it is to be shown
// under its title, which gofpdf has no call for. The catalog is the last object
// before the cross-reference table, so that only the table's place moves.
func withLanguage(pdf []byte, l say.Lang) ([]byte, error) {
	const catalog, start = "/Type /Catalog\n", "startxref\n"
	insert := fmt.Sprintf("/Lang (%s)\n/ViewerPreferences <</DisplayDocTitle true>>\n", l)
	at, tail := bytes.LastIndex(pdf, []byte(catalog)), bytes.LastIndex(pdf, []byte(start))
	var table int
	if at < 0 || tail < at {
		return nil, errCatalog
	}
	if _, err := fmt.Sscan(string(pdf[tail+len(start):]), &table); err != nil || table < at {
		return nil, errCatalog
	}
	var out bytes.Buffer
	out.Write(pdf[:at+len(catalog)])
	out.WriteString(insert)
	out.Write(pdf[at+len(catalog) : tail])
	fmt.Fprintf(&out, "%s%d\n%%%%EOF\n", start, table+len(insert))
	return out.Bytes(), nil
}
