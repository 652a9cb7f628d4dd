package warmup

import (
	"math"
	"strconv"
)

// fits reports whether a clock that says so many minutes can be of what is written down: a row
// that lies later is of another start.
func (h *hand) fits(minutes float64) bool {
	return len(h.rows.all) == 0 || h.latest() <= minutes
}

// latest is the last row's minute; before the first row, one before the start.
func (h *hand) latest() float64 {
	n := len(h.rows.all)
	if n == 0 {
		return -1
	}
	return h.rows.all[n-1].minutes
}

// takeOver lets the clock say the minute, whatever stood there.
func (h *hand) takeOver() {
	if m := h.mending; m != nil {
		m.offered = m.stood[0]
		return
	}
	h.offered = h.minute.Text
}

// tick tells the minute by the clock, unless a person tells another: that stays until its row
// is kept.
func (h *hand) tick(minutes float64) {
	if h.free() {
		h.offer(minutes)
	}
}

// free reports whether a minute may be put into its field.
func (h *hand) free() bool {
	return h.mending == nil && (h.minute.Text == h.offered || h.minute.Text == "") && !h.minute.Typed()
}

// follow offers the minute after the last row, or the clock's where that runs.
func (h *hand) follow() {
	switch {
	case h.clock.runs():
		h.clock.show()
	case !h.free():
	case len(h.rows.all) == 0:
		put(h.minute, "")
	default:
		h.offer(h.latest() + 1)
	}
}

// offer puts a minute into its field, to be typed over.
func (h *hand) offer(minutes float64) {
	h.offered = written(minutes)
	put(h.minute, h.offered)
}

// written writes a minute, to a tenth.
func written(minutes float64) string {
	return strconv.FormatFloat(math.Round(minutes*10)/10, 'f', -1, 64)
}
