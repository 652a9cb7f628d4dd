package warmup

import (
	"math"
	"slices"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// mending is a row that was kept and stands in the fields again.
type mending struct {
	was     row
	stood   [4]string // in the fields before
	offered string
}

// same reports whether both are of one moment.
func (r row) same(other row) bool { return r.at(other.minutes * 60) }

// texts are what the fields say of a row.
func (r row) texts(u units.Set) [4]string {
	t := [4]string{written(r.minutes), "", kit.Written(r.rpm, kit.Plain[float64]), kit.Written(r.kmh, u.Dist)}
	if !math.IsNaN(float64(r.c)) {
		t[1] = u.Temp(r.c)
	}
	return t
}

// meant is what was read, but exactly as it was where nobody typed: the fields round.
func (h *hand) meant(read row) row {
	was, fields := h.mending.was, h.fields()
	texts := was.texts(h.units)
	left := func(i int) bool { return fields[i].Text == texts[i] }
	if left(0) {
		read.minutes = was.minutes
	}
	if left(1) {
		read.c = was.c
	}
	if left(2) {
		read.rpm = was.rpm
	}
	if left(3) {
		read.kmh = was.kmh
	}
	return read
}

// choose puts a row into the fields, once the one that stands there is kept. What stood before
// comes back afterwards.
func (h *hand) choose(r row) {
	if !h.settle() {
		h.rows.mend(h.mending)
		return
	}
	m := &mending{was: r, offered: h.offered}
	for i, f := range h.fields() {
		m.stood[i] = f.Text
	}
	h.mending = m
	h.put(r.texts(h.units))
	h.rows.mend(m)
	h.enter()
}

// settle ends the mending with what was changed kept; false where that is refused.
func (h *hand) settle() bool {
	m := h.mending
	if m == nil {
		return true
	}
	texts := m.was.texts(h.units)
	for i, f := range h.fields() {
		if f.Text != texts[i] {
			return h.keep()
		}
	}
	h.putBack()
	return true
}

// putBack ends the mending, and the fields say what they did before.
func (h *hand) putBack() {
	m := h.mending
	if m == nil {
		return
	}
	h.mending, h.offered = nil, m.offered
	h.put(m.stood)
	h.rows.mend(nil)
	h.follow()
}

// leaveRow leaves the row as it is, and reports whether one was being mended.
func (h *hand) leaveRow() bool {
	if h.mending == nil {
		return false
	}
	h.putBack()
	h.enter()
	return true
}

// enter lets the hand type the temperature, which may have the focus already.
func (h *hand) enter() {
	kit.Focus(h.degrees)
	kit.InSight(h.degrees)
	h.degrees.Mark()
}

// mend keeps what the row should have been, but not over another row.
func (h *hand) mend(r row) bool {
	was, stage := h.mending.was, h.writing
	taken := func(other row) bool { return r.same(other) && !was.same(other) }
	if slices.ContainsFunc(h.rows.all, taken) {
		h.refuseTaken(r)
		return false
	}
	h.putBack()
	if r.texts(h.units) == was.texts(h.units) {
		return true
	}
	h.edit(kit.L("window.warmup.edit-mended", written(was.minutes), h.units.TempUnit(r.c), written(r.minutes)), func(k *cases.Case) {
		r.instead(was, handOf(k, stage))
	})
	return true
}

// remove takes the row that is being mended out of its log.
func (h *hand) remove() {
	was, stage := h.mending.was, h.writing
	h.putBack()
	defer h.enter()
	h.edit(kit.L("window.warmup.edit-deleted", written(was.minutes)), func(k *cases.Case) { remove(k, stage, was) })
}
