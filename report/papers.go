package report

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"time"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Kind is one of the papers.
type Kind string

// The papers: one page for the customer, everything for the shop, and the
// evidence with questions for the class.
const (
	Customer Kind = "customer"
	Record   Kind = "record"
	Trainer  Kind = "trainer"
)

// Kinds lists the papers.
func Kinds() []Kind { return []Kind{Customer, Record, Trainer} }

// ErrKind says that there is no such paper.
var ErrKind = errors.New("unknown paper")

// Material is all that the papers are made from. Case and Found are needed; what
// else is missing is left out of the paper, or is said to be missing.
type Material struct {
	Case   *cases.Case
	Found  evidence.Findings  // the case's own
	Causes *diagnosis.Ranking // of the time before the repair; nil: not judged
	Proof  *proof.Proof       // nil: not judged
	Next   []diagnosis.Check
	Beside *diagnosis.Beside // what the cause leaves open; nil: nothing
	Shop   Shop

	Photo    func(file string) ([]byte, error) // opens a picture of the case; nil: they aren't there
	Revision int                               // of the notebook; 0: the case is of none
	Hash     string                            // SHA-256 of the case's document, in hex; "": not known
}

// Shop is who hands the paper out.
type Shop struct {
	Name    string
	Address string // in lines
	Logo    []byte // JPEG: of the other kinds gofpdf refuses some
}

// Options are a person's choices for a paper. The zero value is A4 in English,
// °C, kPa and km.
type Options struct {
	Units units.Set
	Page  Page
	Lang  say.Lang

	WithoutAnswer bool // leave out the trainer's page with the answer
}

// speaker says what the paper says.
func (o Options) speaker() (say.Speaker, error) {
	return say.In(cmp.Or(o.Lang, say.EN), chosen(o.Units))
}

// Write makes one of the papers as PDF.
func Write(w io.Writer, k Kind, m Material, o Options) error {
	switch k {
	case Customer:
		return writeCustomer(w, m, o)
	case Record, "":
		return writeRecord(w, m, o)
	case Trainer:
		return writeTrainer(w, m, o)
	}
	return fmt.Errorf("%w %q: must be %s, %s or %s", ErrKind, string(k), Customer, Record, Trainer)
}

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

// chosen is the set with the usual units where none is chosen.
func chosen(u units.Set) units.Set {
	usual := units.Metric()
	u.Temperature = cmp.Or(u.Temperature, usual.Temperature)
	u.Pressure = cmp.Or(u.Pressure, usual.Pressure)
	u.Distance = cmp.Or(u.Distance, usual.Distance)
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
