package checks

import (
	"slices"

	"loopbook/cases"
)

// keep edits the shown check. One that holds nothing any more isn't kept: it would stand as begun,
// and on paper without a value.
func (v *View) keep(what string, change func(*cases.Case)) {
	at := v.place()
	if at == len(v.c.Tests) {
		trial := v.c // the check is put behind the others, which stay as they are
		if change(&trial); at < len(trial.Tests) && idle(trial.Tests[at], v.say.Stage(&v.c, v.kind)) {
			return
		}
		v.edit(what, change)
		return
	}
	stage, next := v.c.Tests[at].Stage, len(v.tests(v.kind))-1
	v.edit(what, func(c *cases.Case) {
		change(c)
		if !idle(c.Tests[at], stage) {
			return
		}
		c.Tests = slices.Delete(c.Tests, at, at+1)
		v.nth, v.sheet.nth = next, next // whoever goes on typing begins a new one, not another one's
	})
}

// idle reports whether a check holds nothing, and its stage is the one that it had, not one chosen just now.
func idle(t cases.Test, stage cases.Stage) bool { return t.Stage == stage && t.Bare() }
