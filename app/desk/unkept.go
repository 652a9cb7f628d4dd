package desk

import (
	"fmt"
	"slices"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// unkept is what was done in the open case and couldn't be written. It stands on the screen alone, and is tried
// again with the next edit.
type unkept struct {
	why     error
	what    []string // was done, the first edit first
	changes []func(*cases.Case)
	before  []cases.Case // each of them; the first is as the notebook has the case
}

// Unkept tells what was done in the open case that isn't on the disk, and why; nil where all is.
func (d *Desk) Unkept() (what []string, why error) {
	if d.unkept == nil {
		return nil, nil
	}
	return d.unkept.what, d.unkept.why
}

// kept is the case as the notebook had it when it was read or written here last.
func (d *Desk) kept() cases.Case {
	if d.unkept == nil {
		return d.Case
	}
	return d.unkept.before[0]
}

// unkeptChanges are what was done since, in a list of one's own.
func (d *Desk) unkeptChanges() []func(*cases.Case) {
	if d.unkept == nil {
		return nil
	}
	return slices.Clone(d.unkept.changes)
}

// hold shows the case as it should be though it couldn't be written, and tells so once.
func (d *Desk) hold(what string, next cases.Case, change func(*cases.Case), why error) {
	first := d.unkept == nil
	if first {
		d.unkept = &unkept{}
	}
	u := d.unkept
	u.why, u.what, u.changes, u.before = why, append(u.what, what), append(u.changes, change), append(u.before, d.Case)
	d.take(next)
	if first {
		d.Told(fmt.Errorf("%w.\n\n%s", why, say.English().Of("window.frame.unkept-stays")))
	}
}

// Keep tries again to write what couldn't be.
func (d *Desk) Keep() error {
	if d.unkept == nil {
		return nil
	}
	u := d.unkept
	now, err := d.put(u.what[len(u.what)-1], d.Case, u.changes)
	if err != nil {
		u.why = err
		d.Changed()
		return err
	}
	d.written(d.kept(), now)
	return nil
}

// written shows a case that is on the disk now.
func (d *Desk) written(before, now cases.Case) {
	d.unkept, d.Back = nil, false
	d.remember(before, now)
	d.take(now)
	d.Kept()
}

// takeBack undoes the last edit that couldn't be written.
func (d *Desk) takeBack() {
	u, last := d.unkept, len(d.unkept.before)-1
	was := u.before[last]
	u.what, u.changes, u.before = u.what[:last], u.changes[:last], u.before[:last]
	if last == 0 {
		d.unkept = nil
	}
	d.take(was)
}
