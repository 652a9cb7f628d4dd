package desk

import (
	"errors"
	"reflect"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// Beside tells that an edit was kept beside what another program did to the case: nothing failed.
type Beside struct{ says string }

func (b Beside) Error() string { return b.says }

// put keeps the case as it is here after changes of what the notebook has, or beside what another program did to it.
func (d *Desk) put(what string, mine cases.Case, changes []func(*cases.Case)) (cases.Case, error) {
	err := d.Store.PutOver(d.ctx, d.History, mine, what)
	if errors.Is(err, cases.ErrChanged) {
		return d.beside(what, mine, changes)
	}
	return mine, err
}

// beside keeps changes of a case that another program has changed since it was read here: in the case as that left it,
// or, where rounds or the like have come or gone, over it. Nothing of the other is lost then either: a step
// back leads to it.
func (d *Desk) beside(what string, mine cases.Case, changes []func(*cases.Case)) (cases.Case, error) {
	theirs, err := d.Store.Get(d.ctx, mine.ID)
	if err != nil {
		return mine, err
	}
	next, said := mine, "window.frame.changed-over"
	if alike(d.kept(), theirs) {
		next, said = theirs, "window.frame.changed-both"
		for _, change := range changes {
			change(&next)
		}
	}
	if _, err = d.Store.Put(d.ctx, next, what); err == nil {
		d.Told(Beside{say.English().Of(said)})
	}
	return next, err
}

// alike reports whether what an edit may count in a case is the same in both.
func alike(a, b cases.Case) bool {
	return len(a.Rounds) == len(b.Rounds) && reflect.DeepEqual(a.Codes, b.Codes) && reflect.DeepEqual(a.Tests, b.Tests) &&
		reflect.DeepEqual(a.Logs, b.Logs) && reflect.DeepEqual(a.Photos, b.Photos) && reflect.DeepEqual(a.Repair.Parts, b.Repair.Parts)
}
