// Package report writes a case's papers as PDF: one page for the customer, the
// shop's record, the trainer's sheet.
//
// The same material makes the same bytes. The papers carry their fonts; lengths
// inside the package are points.
package report

import (
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// sheet is a paper that tells a case in sections, on its way to the PDF.
type sheet struct {
	*paper
	m     Material
	c     *cases.Case
	f     evidence.Findings
	codes evidence.Codes
	loop  *diagram.Loop    // nil: not known
	blank []say.Text       // the sections that nothing is noted for
	check []evidence.Check // what each of the case's tests comes to

	unjudged bool // the class is to judge
}

// newSheet begins a sheet about the material's case.
func newSheet(m Material, o Options, a about) (*sheet, error) {
	codes, err := evidence.ShippedCodes()
	if err != nil {
		return nil, err
	}
	p, err := newPaper(m.Case, o, a)
	if err != nil {
		return nil, err
	}
	s := &sheet{paper: p, m: m, c: m.Case, f: m.Found, codes: codes, loop: layout(m.Case)}
	for i := range m.Case.Tests {
		s.check = append(s.check, evidence.Workshop(m.Case, &m.Case.Tests[i]))
	}
	return s, nil
}

// none remembers a section that nothing is noted for.
func (s *sheet) none(name say.Text) { s.blank = append(s.blank, name) }

// title is the case's, which has one or not.
func title(c *cases.Case) say.Text {
	if c.Title == "" {
		return say.Of("paper.untitled")
	}
	return say.Own(c.Title)
}

func caseName(c *cases.Case) say.Text {
	if c.ID == "" {
		return say.Of("paper.case", say.Of("paper.no-id"))
	}
	return say.Of("paper.case", c.ID)
}
