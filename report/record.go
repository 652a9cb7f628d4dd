// Package report writes a case's papers as PDF.
//
// The same case and findings make the same bytes. The papers carry their
// fonts; lengths inside the package are points.
package report

import (
	"io"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// writeRecord writes the technician's record: all that the case holds and what
// its measurements say. What the findings lack is written without a verdict.
func writeRecord(w io.Writer, m Material, o Options) error {
	c, f := m.Case, m.Found
	codes, err := evidence.ShippedCodes()
	if err != nil {
		return err
	}
	made, changed := dates(c)
	p, err := newPaper(o, about{title: orElse(c.Title, "Untitled case"), subject: "Technician's record of a cooling loop",
		foot: "Loopbook · technician's record · case " + orElse(c.ID, "without id"), made: made, changed: changed})
	if err != nil {
		return err
	}
	r := record{paper: p, c: c, f: f, say: words{chosen(o.Units)}, codes: codes, loop: layout(c)}
	r.write()
	return p.write(w)
}

// record is a technician's record on its way to the paper.
type record struct {
	*paper
	c     *cases.Case
	f     evidence.Findings
	say   words
	codes evidence.Codes
	loop  *diagram.Loop // nil: not known
	blank []string      // the sections that nothing is noted for
}

func (r *record) write() {
	r.head()
	r.cautions()
	r.vehicle()
	r.fitted()
	r.complaint()
	r.troubleCodes()
	r.rounds()
	r.warmUps()
	r.wholeCase()
	r.tests()
	r.verdict()
	r.repair()
	r.boiling()
	r.kept()
	r.sources()
	r.blanks()
}

func (p *paper) title(c *cases.Case) string { return orElse(c.Title, p.by.Of("paper.untitled")) }
