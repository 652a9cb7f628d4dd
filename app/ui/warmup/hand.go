package warmup

import (
	"math"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// hand is what somebody writes down row by row. Enter behind the temperature keeps
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
	content         fyne.CanvasObject
}

func newHand(edit func(what string, change func(*cases.Case)), now func() time.Time) *hand {
	h := &hand{edit: edit, units: units.Metric()}
	h.stage = kit.NewChoice(cases.Words[cases.Stage](), cases.Stage.Name, h.write)
	h.write(cases.BeforeRepair)
	h.minute, h.degrees = kit.NewField("", nil), kit.NewField("", nil)
	h.rpm, h.speed = kit.NewField("", nil), kit.NewField("", nil)
	h.rpm.After = func() fyne.Focusable { return h.speed }
	h.speed.After = func() fyne.Focusable { return h.degrees }
	h.minute.After = h.speed.After
	h.degrees.Stay = true
	h.degrees.OnSubmitted = func(string) { h.add() }
	h.clock = newClock(now, h.takeOver, h.tick)
	h.content = kit.Section(kit.L("window.warmup.written-down"),
		kit.Paragraphs(kit.Span{Text: kit.L("window.warmup.written-down-text"), Small: true}),
		kit.Labelled(kit.L("window.warmup.stage"), h.stage.Select),
		h.clock.content,
		kit.Explained(container.NewGridWithColumns(2,
			kit.Labelled(kit.L("window.warmup.minute"), h.minute), kit.Labelled("", h.degrees),
			kit.Labelled(kit.L("window.warmup.rpm"), h.rpm), kit.Labelled("", h.speed))),
		kit.Card("act", kit.L("window.warmup.caution"),
			kit.Span{Text: kit.L("window.warmup.caution-text"), Small: true}))
	h.in(h.units)
	return h
}

// in writes and reads in these units.
func (h *hand) in(u units.Set) {
	h.units = u
	h.degrees.Title(kit.L("window.warmup.coolant", string(u.Temperature)))
	h.speed.Title(kit.L("window.warmup.speed", u.SpeedUnit()))
}

// begin forgets what was written of another case.
func (h *hand) begin(stage cases.Stage) {
	h.clock.stop()
	h.write(stage)
	h.clear()
}

// clear empties the row.
func (h *hand) clear() {
	for _, f := range []*kit.Field{h.minute, h.degrees, h.rpm, h.speed} {
		put(f, "")
	}
}

// busy reports whether a warm-up is being written down.
func (h *hand) busy() bool { return h.clock.runs() || h.minute.Text != "" }

// takeOver lets the clock say the minute, whatever stood there.
func (h *hand) takeOver() { h.offered = h.minute.Text }

// tick tells the minute by the clock, unless a person tells another: that stays until its row
// is kept.
func (h *hand) tick(minutes float64) {
	if (h.minute.Text == h.offered || h.minute.Text == "") && !h.minute.Typed() {
		h.offer(minutes)
	}
}

// offer puts a minute into its field, to be typed over.
func (h *hand) offer(minutes float64) {
	h.offered = written(minutes)
	put(h.minute, h.offered)
}

// put shows text in a field as if it had been typed and read.
func put(f *kit.Field, text string) {
	f.SetText(text)
	f.Leave()
	f.Refuse(nil)
}

// write says which warm-up is written down from now on; one that isn't known is
// before the repair.
func (h *hand) write(s cases.Stage) {
	if s == "" {
		s = cases.BeforeRepair
	}
	h.writing = s
	h.stage.Put(s)
}

// row is a line of what is written down; nil: not known.
type row struct {
	minutes  float64
	c        diagram.Celsius
	rpm, kmh *float64
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
	minutes, err := kit.Between(units.Number, 0, mostMinutes, kit.Plain[float64])(h.minute.Text)
	take(h.minute, err)
	c, err := kit.ParseCoolant(h.units)(h.degrees.Text)
	take(h.degrees, err)
	take(h.rpm, kit.Set(&r.rpm, h.rpm.Text, kit.ParseRPM))
	take(h.speed, kit.Set(&r.kmh, h.speed.Text, kit.ParseSpeed(h.units)))
	r.minutes, r.c = minutes, c
	return r, ok
}

// add takes the row into the log that is written down.
func (h *hand) add() {
	r, ok := h.read()
	if !ok {
		return
	}
	put(h.degrees, "")
	h.offer(r.minutes + 1) // the next line of the list
	h.clock.show()         // or the minute by the clock, where that runs
	h.edit(kit.L("window.warmup.edit-row", h.units.TempUnit(r.c), written(r.minutes)), func(k *cases.Case) {
		r.into(handOf(k, h.writing))
	})
}

func written(minutes float64) string {
	return strconv.FormatFloat(math.Round(minutes*10)/10, 'f', -1, 64)
}
