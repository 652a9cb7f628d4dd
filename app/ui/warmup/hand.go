package warmup

import (
	"errors"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// hand is what somebody writes down row by row. Enter at the temperature, or behind it, keeps
// the row; how the car was run stays for the next one until it is changed.
type hand struct {
	edit    func(what string, change func(*cases.Case))
	units   units.Set
	stage   *kit.Choice[cases.Stage]
	writing cases.Stage
	clock   *clock

	minute, degrees *kit.Field
	offered         string     // what was put into the minute last; anything else is a person's
	rpm, speed      *kit.Field // empty: not known
	logs            cases.Case // whose logs are written in
	rows            *rows      // what is written down of the stage
	mending         *mending   // nil: the fields are for a new row
	caution         *kit.Prose
	content         fyne.CanvasObject
}

func newHand(edit func(what string, change func(*cases.Case)), now func() time.Time) *hand {
	h := &hand{edit: edit, units: units.Metric(), caution: kit.Paragraphs()}
	h.stage = kit.NewChoice(cases.Words[cases.Stage](), cases.Stage.Name, h.pickStage)
	h.rows = newRows(h.choose, h.submit, h.remove, h.leaveRow)
	h.minute, h.degrees = kit.NewField("", nil), kit.NewField("", nil)
	h.rpm, h.speed = kit.NewField("", nil), kit.NewField("", nil)
	h.minute.After = func() fyne.Focusable { return h.degrees }
	h.rpm.After = func() fyne.Focusable { return h.onward(h.rpm, h.speed) }
	h.speed.After = func() fyne.Focusable { return h.onward(h.speed, h.degrees) }
	h.degrees.Stay = true
	h.degrees.OnSubmitted = func(string) { h.submit() }
	h.clock = newClock(now, h.fits, h.takeOver, h.tick)
	h.content = kit.Section(kit.L("window.warmup.written-down"),
		kit.Paragraphs(kit.Span{Text: kit.L("window.warmup.written-down-text"), Small: true}),
		kit.Labelled(kit.L("window.warmup.stage"), h.stage.Select),
		h.clock.content,
		kit.Explained(container.NewGridWithColumns(2,
			kit.Labelled(kit.L("window.warmup.minute"), h.minute), kit.Labelled("", h.degrees),
			kit.Labelled(kit.L("window.warmup.rpm"), h.rpm), kit.Labelled("", h.speed))),
		h.rows.content,
		kit.CardOf("act", kit.L("window.warmup.caution"), h.caution))
	h.write(cases.BeforeRepair)
	h.in(h.units)
	return h
}

// in writes and reads in these units.
func (h *hand) in(u units.Set) {
	if h.units != u {
		h.putBack() // the row stands there in the others
	}
	h.units = u
	h.degrees.Title(kit.L("window.warmup.coolant", string(u.Temperature)))
	h.speed.Title(kit.L("window.warmup.speed", u.SpeedUnit()))
}

// mind says what to look out for, first of all with an engine that was too hot.
func (h *hand) mind(overheated bool) {
	text := kit.L("window.warmup.caution-text")
	if overheated {
		text = kit.L("check.overheats") + " " + text
	}
	kit.SetParagraphs(h.caution, kit.Span{Text: text, Small: true})
}

// begin forgets what was written of another case.
func (h *hand) begin(k cases.Case) {
	h.clock.stop()
	h.mending, h.logs = nil, k
	h.write(kit.StageNow(&k))
	h.clear()
}

// show takes the case as it is now. A row that would come next goes with the last of its log.
func (h *hand) show(k cases.Case) {
	h.logs = k
	had := h.rows.all
	h.list()
	switch now := h.rows.all; {
	case len(had) > 0 && len(now) == 0:
		h.clear()
	case !slices.EqualFunc(had, now, func(a, b row) bool { return a.minutes == b.minutes }):
		h.follow()
	}
}

// list shows the rows of the log that is written down. One that is gone is mended no longer.
func (h *hand) list() {
	all := rowsOf(&h.logs, h.writing)
	if m := h.mending; m != nil && !slices.ContainsFunc(all, m.was.same) {
		h.putBack()
	}
	h.rows.show(all, h.units, h.mending)
	if h.fits(0) {
		h.clock.refuse(false)
	}
}

// fields are a row's, in its order.
func (h *hand) fields() [4]*kit.Field {
	return [4]*kit.Field{h.minute, h.degrees, h.rpm, h.speed}
}

// clear empties the row.
func (h *hand) clear() { h.put([4]string{}) }

// put fills the fields.
func (h *hand) put(texts [4]string) {
	for i, f := range h.fields() {
		put(f, texts[i])
	}
}

// busy reports whether a warm-up is being written down.
func (h *hand) busy() bool { return h.clock.runs() || h.minute.Text != "" }

// put shows text in a field as if it had been typed and read: Escape comes back to it.
func put(f *kit.Field, text string) {
	f.Refuse(nil)
	f.Forget()
	f.Put(text)
}

// pickStage turns to the stage that a person chose, unless a mended row can't be kept.
func (h *hand) pickStage(s cases.Stage) {
	if !h.settle() {
		h.stage.Put(h.writing)
		return
	}
	h.turn(s)
}

// turn writes another warm-up down, from where that was left.
func (h *hand) turn(s cases.Stage) {
	h.write(s)
	h.clock.check()
	h.follow()
}

// write says which warm-up is written down from now on; one that isn't known is
// before the repair.
func (h *hand) write(s cases.Stage) {
	if s == "" {
		s = cases.BeforeRepair
	}
	if s != h.writing {
		h.putBack()
	}
	h.writing = s
	h.stage.Put(s)
	h.list()
}

// mostMinutes is longer than any engine takes to warm up.
const mostMinutes = 600

// read takes the fields; what can't be is marked in its own.
func (h *hand) read() (r row, ok bool) {
	ok = true
	take := func(f *kit.Field, err error) {
		f.Leave()
		f.Refuse(err)
		ok = ok && err == nil
	}
	if h.minute.Text == "" && len(h.rows.all) == 0 {
		put(h.minute, "0") // a warm-up begins with the start
	}
	minutes, err := kit.Between(units.Minutes().Clock, 0, mostMinutes, kit.Plain[float64])(h.minute.Text)
	take(h.minute, err)
	c, err := kit.ParseCoolant(h.units)(h.degrees.Text)
	take(h.degrees, err)
	take(h.rpm, kit.Set(&r.rpm, h.rpm.Text, kit.ParseRPM))
	take(h.speed, kit.Set(&r.kmh, h.speed.Text, kit.ParseSpeed(h.units)))
	r.minutes, r.c = minutes, c
	return r, ok
}

// keep takes the row into the log that is written down; false where it is refused.
func (h *hand) keep() bool {
	r, ok := h.read()
	switch {
	case !ok:
		return false
	case h.mending != nil:
		return h.mend(h.meant(r))
	}
	return h.add(r)
}

// submit keeps the row and goes on to the next temperature. Enter once more, with none typed yet, is no row.
func (h *hand) submit() {
	if h.mending == nil && h.degrees.Text == "" {
		return
	}
	if h.keep() {
		h.enter()
	}
}

// onward is where Enter leads from how the car was run: a row with its temperature is kept,
// and without one it goes on to next.
func (h *hand) onward(from, next *kit.Field) fyne.Focusable {
	switch {
	case h.degrees.Text == "":
		return next
	case h.keep():
		return h.degrees
	}
	return from
}

// leave keeps a row that was typed and not entered. One that can't be read stays, marked.
func (h *hand) leave() {
	if h.settle() && h.degrees.Text != "" {
		h.keep()
	}
}

// add keeps a new row, but not over another one; the same row again is that row.
func (h *hand) add(r row) bool {
	i := slices.IndexFunc(h.rows.all, r.same)
	if i >= 0 && h.rows.all[i].texts(h.units) != r.texts(h.units) {
		h.refuseTaken(r)
		return false
	}
	put(h.degrees, "")
	h.offer(max(r.minutes, h.latest()) + 1) // the next line of the list
	h.clock.show()                          // or the minute by the clock, where that runs
	if i >= 0 {
		return true
	}
	h.edit(kit.L("window.warmup.edit-row", h.units.TempUnit(r.c), written(r.minutes)), func(k *cases.Case) {
		r.into(handOf(k, h.writing))
	})
	return true
}

// refuseTaken says that the moment has its row, which may be mended.
func (h *hand) refuseTaken(r row) {
	h.minute.Refuse(errors.New(kit.L("window.warmup.taken", written(r.minutes))))
}
