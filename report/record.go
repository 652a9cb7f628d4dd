// Package report writes a case's papers as PDF.
//
// The same case and findings make the same bytes. The papers carry their
// fonts; lengths inside the package are points.
package report

import (
	"errors"
	"fmt"
	"io"
	"time"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Page is a size of paper.
type Page string

// The sizes.
const (
	A4     Page = "A4"     // 210 mm × 297 mm, ISO 216
	Letter Page = "Letter" // 8.5 in × 11 in
)

// ErrPage says that a size of paper isn't known.
var ErrPage = errors.New("unknown size of paper")

func (s Page) points() (width, height float64, err error) {
	switch s {
	case A4, "":
		return 210 / 25.4 * 72, 297 / 25.4 * 72, nil
	case Letter:
		return 8.5 * 72, 11 * 72, nil
	}
	return 0, 0, fmt.Errorf("%w %q: must be %s or %s", ErrPage, string(s), A4, Letter)
}

// Options are a person's choices for a paper. The zero value is A4 in °C, kPa
// and km.
type Options struct {
	Units units.Set
	Page  Page
}

// Record writes the technician's record: all that the case holds and what its
// measurements say. f must be the case's own findings; what they lack is
// written without a verdict.
func Record(w io.Writer, c *cases.Case, f evidence.Findings, o Options) error {
	codes, err := evidence.ShippedCodes()
	if err != nil {
		return err
	}
	made, changed := dates(c)
	p, err := newPaper(o.Page, title(c), "Loopbook · technician's record · case "+orElse(c.ID, "without id"), made, changed)
	if err != nil {
		return err
	}
	r := record{paper: p, c: c, f: f, say: words{chosen(o.Units)}, by: say.English().With(chosen(o.Units)), codes: codes, loop: layout(c)}
	r.write()
	return p.write(w)
}

// record is a technician's record on its way to the paper.
type record struct {
	*paper
	c     *cases.Case
	f     evidence.Findings
	say   words
	by    say.Speaker
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

func title(c *cases.Case) string { return orElse(c.Title, "Untitled case") }

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// chosen is the set with the usual units where none is chosen.
func chosen(u units.Set) units.Set {
	usual := units.Metric()
	if u.Temperature == "" {
		u.Temperature = usual.Temperature
	}
	if u.Pressure == "" {
		u.Pressure = usual.Pressure
	}
	if u.Distance == "" {
		u.Distance = usual.Distance
	}
	return u
}

// layout is the case's, or nil.
func layout(c *cases.Case) *diagram.Loop {
	l, err := diagram.LoopByID(c.Loop.Layout)
	if err != nil {
		return nil
	}
	return l
}

// dates are when the case was opened and last measured: the document's own
// dates. A case without any has the epoch's.
func dates(c *cases.Case) (made, changed time.Time) {
	made = c.Opened
	if made.IsZero() {
		made = time.Unix(0, 0)
	}
	changed = made
	for _, r := range c.Rounds {
		if r.Taken.After(changed) {
			changed = r.Taken
		}
	}
	return made, changed
}
