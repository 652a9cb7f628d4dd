// Package access knows what stands in the way of a part on each layout, what is
// renewed with it, how the loop is filled and bled after it, and what to beware
// of. Hours are rough, for one trained person on a lift, and are for ordering
// work by its cost, not for quoting.
//
// The rows are data (assets/access.json) and each has the class of its source;
// their words are in the catalogue.
package access

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"sync"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/diagram/say"
)

// Note is a place where a part sits.
type Note struct {
	ID         string
	What       say.Text // the part and its place
	Way        say.Text // what has to come off or be moved
	Renew      say.Text // what is renewed with it
	Hours      say.Text // from and to
	Class      say.Text // of the source
	ForVerdict bool     // it is the part of the cause that was found
}

// Step is something to do and to tick off, in the order of the work.
type Step struct {
	ID   string // as kept in the case's repair.steps_done
	Text say.Text
	Done bool
}

// Advice is what applies to one case.
type Advice struct {
	Notes    []Note // the parts of the cause that was found first
	Steps    []Step
	Cautions []say.Text
}

// Due are the notes of the cause that was found.
func (a Advice) Due() []Note {
	end := 0
	for end < len(a.Notes) && a.Notes[end].ForVerdict {
		end++
	}
	return a.Notes[:end]
}

// For is the advice for a case's loop and verdict. An error names the shipped
// data that is at fault.
func For(c *cases.Case) (Advice, error) {
	all, err := shipped()
	if err != nil {
		return Advice{}, err
	}
	a := Advice{}
	for _, r := range all.Notes {
		if r.fits(c) {
			a.Notes = append(a.Notes, r.note(c.Verdict.Cause))
		}
	}
	slices.SortStableFunc(a.Notes, func(x, y Note) int { return rank(x) - rank(y) })
	for _, r := range all.Steps {
		if r.fits(c) && r.concerns(c.Verdict.Cause) {
			a.Steps = append(a.Steps, Step{r.ID, say.Of("access.step."+r.ID, cases.OpenBelowC), slices.Contains(c.Repair.StepsDone, r.ID)})
		}
	}
	due := a.Due()
	for _, r := range all.Cautions {
		if r.fits(c) && r.goesWith(due) {
			a.Cautions = append(a.Cautions, say.Of("access.caution."+r.ID))
		}
	}
	return a, nil
}

func rank(n Note) int {
	if n.ForVerdict {
		return 0
	}
	return 1
}

// row is a line of the data. An empty list fits every case.
type row struct {
	ID      string          `json:"id"`
	Causes  []cases.Cause   `json:"causes"`
	Hours   [2]float64      `json:"hours"`
	Layouts []string        `json:"layouts"`
	Fans    []cases.FanKind `json:"fans"`
	Motives []cases.Motive  `json:"motives"`
	Notes   []string        `json:"notes"` // a caution that goes with these parts only
	Class   string          `json:"class"`
	Source  string          `json:"source"`
}

type table struct {
	Notes    []row `json:"notes"`
	Steps    []row `json:"steps"`
	Cautions []row `json:"cautions"`
}

var shipped = sync.OnceValues(func() (table, error) {
	var t table
	in := json.NewDecoder(bytes.NewReader(assets.Access))
	in.DisallowUnknownFields()
	if err := in.Decode(&t); err != nil {
		return t, fmt.Errorf("access.json: %w", err)
	}
	return t, nil
})

// fits reports whether the row may concern the case's loop; what isn't noted
// rules nothing out, but a motive has to be said.
func (r row) fits(c *cases.Case) bool {
	return among(r.Layouts, c.Loop.Layout) && among(r.Fans, c.Loop.Fan) &&
		(len(r.Motives) == 0 || slices.Contains(r.Motives, c.Vehicle.Motive))
}

func among[T ~string](list []T, word T) bool {
	return len(list) == 0 || word == "" || slices.Contains(list, word)
}

func (r row) concerns(cause cases.Cause) bool {
	return len(r.Causes) == 0 || slices.Contains(r.Causes, cause)
}

func (r row) goesWith(due []Note) bool {
	return len(r.Notes) == 0 || slices.ContainsFunc(due, func(n Note) bool { return slices.Contains(r.Notes, n.ID) })
}

func (r row) note(cause cases.Cause) Note {
	at := "access." + r.ID
	return Note{
		ID: r.ID, What: say.Of(at + ".what"), Way: say.Of(at + ".way"), Renew: say.Of(at + ".renew"),
		Hours: say.Of("access.hours", r.Hours[0], r.Hours[1]), Class: r.class(),
		ForVerdict: slices.Contains(r.Causes, cause),
	}
}

func (r row) class() say.Text {
	if r.Class == "published" {
		return say.Of("access.class.published", r.Source)
	}
	return say.Of("access.class.common")
}
