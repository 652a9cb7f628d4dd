package desk

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// unkept is what was done in the open case and couldn't be written. It stands on the screen alone, and is tried
// again with the next edit.
type unkept struct {
	why    error
	what   []string     // was done, the first edit first
	before []cases.Case // each of them; the first is as the notebook has the case
}

// Unkept tells what was done in the open case that isn't on the disk, and why; nil where all is.
func (d *Desk) Unkept() (what []string, why error) {
	if d.unkept == nil {
		return nil, nil
	}
	return d.unkept.what, d.unkept.why
}

// hold shows the case as it should be though it couldn't be written, and tells so once.
func (d *Desk) hold(what string, next cases.Case, why error) {
	first := d.unkept == nil
	if first {
		d.unkept = &unkept{}
	}
	u := d.unkept
	u.why, u.what, u.before = why, append(u.what, what), append(u.before, d.Case)
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
	if _, err := d.Store.Put(d.ctx, d.Case, u.what[len(u.what)-1]); err != nil {
		u.why = err
		d.Changed()
		return err
	}
	d.written(u.before[0], d.Case)
	return nil
}

// written shows a case that is on the disk now.
func (d *Desk) written(before, now cases.Case) {
	d.unkept = nil
	d.remember(before, now)
	d.take(now)
	d.Kept()
}

// takeBack undoes the last edit that couldn't be written.
func (d *Desk) takeBack() {
	u, last := d.unkept, len(d.unkept.before)-1
	was := u.before[last]
	u.what, u.before = u.what[:last], u.before[:last]
	if last == 0 {
		d.unkept = nil
	}
	d.take(was)
}
