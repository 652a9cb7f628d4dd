package desk

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// unkept is what was done in the open case and couldn't be written. It stands on the screen alone, and is tried
// again with the next edit.
type unkept struct {
	why   error
	edits []edit // the first one first
}

// edit is one change of the open case.
type edit struct {
	what   string
	change func(*cases.Case)
	before cases.Case // it; before the first unkept one as the notebook has the case
}

// Unkept tells what was done in the open case that isn't on the disk, and why; nil where all is.
func (d *Desk) Unkept() (what []string, why error) {
	if d.unkept == nil {
		return nil, nil
	}
	for _, e := range d.unkept.edits {
		what = append(what, e.what)
	}
	return what, d.unkept.why
}

// kept is the case as the notebook had it when it was read or written here last.
func (d *Desk) kept() cases.Case {
	if d.unkept == nil {
		return d.Case
	}
	return d.unkept.edits[0].before
}

// changes are what was done since, in order.
func (d *Desk) changes() (out []func(*cases.Case)) {
	if d.unkept == nil {
		return nil
	}
	for _, e := range d.unkept.edits {
		out = append(out, e.change)
	}
	return out
}

// hold shows the case as it should be though it couldn't be written, and tells so once.
func (d *Desk) hold(what string, next cases.Case, change func(*cases.Case), why error) {
	first := d.unkept == nil
	if first {
		d.unkept = &unkept{}
	}
	u := d.unkept
	u.why, u.edits = why, append(u.edits, edit{what, change, d.Case})
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
	now, err := d.put(u.edits[len(u.edits)-1].what, d.Case, d.changes())
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
	u, last := d.unkept, len(d.unkept.edits)-1
	was := u.edits[last].before
	u.edits = u.edits[:last]
	if last == 0 {
		d.unkept = nil
	}
	d.take(was)
}
