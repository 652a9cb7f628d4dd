package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// desk holds the case that is open and everything that happens to it. It knows
// no widget: the window shows what it says and calls it.
type desk struct {
	ctx     context.Context
	store   *sqlite.Store
	mind    *mind.Mind
	judging *judging
	apart   Apart
	units   units.Set
	odds    odds

	open    bool
	c       cases.Case
	found   evidence.Findings
	round   int
	history cases.History
	slips   map[diagram.Point]slip // what was typed in this round and can't be read

	// changed is called when what is shown is no longer true; kept when the
	// notebook holds something else than before; told with what a person must
	// know.
	changed func()
	kept    func()
	told    func(error)
}

// slip is a number that was typed and could not be kept.
type slip struct{ text, why string }

func newDesk(ctx context.Context, store *sqlite.Store, apart Apart) (*desk, error) {
	m, err := mind.New()
	if err != nil {
		return nil, err
	}
	d := &desk{
		ctx: ctx, store: store, mind: m, judging: newJudging(m, apart), apart: apart, units: units.Metric(), round: -1,
		changed: func() {}, kept: func() {}, told: func(error) {},
	}
	d.judging.gathered = func() {
		d.found = d.mind.Analyst.Analyse(&d.c) // by the model's ranges now
		d.changed()
	}
	return d, nil
}

// load opens a case at its last round.
func (d *desk) load(id string) {
	c, err := d.store.Get(d.ctx, id)
	if err != nil {
		d.told(err)
		return
	}
	d.open, d.round = true, len(c.Rounds)-1
	d.take(c, nil)
	d.count()
}

// begin opens a new case, already kept.
func (d *desk) begin() {
	c := cases.Case{
		Opened: time.Now().UTC().Truncate(time.Second),
		Loop:   cases.Loop{Layout: "outlet-thermostat"},
		Rounds: []cases.Round{{Label: say.English().Of("round.warm-idle"), Stage: cases.BeforeRepair}},
	}
	id, err := d.store.Put(d.ctx, c, say.English().Of("window.frame.new-case-edit"))
	if err != nil {
		d.told(err)
		return
	}
	d.load(id)
	d.kept()
}

func (d *desk) close() {
	d.judging.stop()
	d.open, d.c, d.round = false, cases.Case{}, -1
	d.changed()
}

// take shows a case as the store has it, with the slips that are still in its
// round.
func (d *desk) take(c cases.Case, slips map[diagram.Point]slip) {
	d.c, d.slips = c, slips
	d.found = d.mind.Analyst.Analyse(&d.c)
	d.round = min(max(d.round, -1), len(c.Rounds)-1)
	if d.round < 0 && len(c.Rounds) > 0 {
		d.round = 0
	}
	h, err := d.store.History(d.ctx, c.ID)
	if err != nil {
		d.told(err)
	}
	d.history = h
	if err := d.judging.judge(c, d.found); err != nil {
		d.told(err)
	}
	d.changed()
}

// edit changes the case and keeps it at once: when it returns, the change is
// on the disk or the person has been told that it isn't.
func (d *desk) edit(what string, change func(*cases.Case)) {
	if !d.open {
		return
	}
	next, err := copyOf(d.c)
	if err != nil {
		d.told(err)
		return
	}
	change(&next)
	if _, err := d.store.Put(d.ctx, next, what); err != nil {
		d.told(fmt.Errorf("this was not kept, the case stands as before: %w", err))
		d.changed()
		return
	}
	d.remember(d.c, next)
	d.take(next, d.slips)
	d.kept()
}

// copyOf is the case apart from the one that is shown, so that a change that
// can't be kept leaves nothing behind.
func copyOf(c cases.Case) (cases.Case, error) {
	text, err := cases.Encode(c)
	if err != nil {
		return cases.Case{}, err
	}
	return cases.Decode(text)
}

func (d *desk) undo() { d.walk(d.store.Undo) }
func (d *desk) redo() { d.walk(d.store.Redo) }

// walk goes a step back or forth and turns to the round that it is about.
func (d *desk) walk(step func(context.Context, string) (cases.Case, error)) {
	if !d.open {
		return
	}
	c, err := step(d.ctx, d.c.ID)
	if errors.Is(err, cases.ErrNothingToUndo) || errors.Is(err, cases.ErrNothingToRedo) {
		return
	}
	if err != nil {
		d.told(err)
		return
	}
	if i := turned(d.c, c); i >= 0 {
		d.round = i
	}
	d.take(c, nil)
	d.kept()
}

// remove takes the case out of the notebook; restore brings it back.
func (d *desk) remove() {
	if err := d.store.Delete(d.ctx, d.c.ID); err != nil {
		d.told(err)
		return
	}
	d.close()
	d.kept()
}

// restore brings back the case that was deleted last, today or long ago.
func (d *desk) restore() {
	id, err := d.store.LastDeleted(d.ctx)
	if errors.Is(err, cases.ErrNotFound) {
		return
	}
	if err == nil {
		_, err = d.store.Restore(d.ctx, id)
	}
	if err != nil {
		d.told(err)
		return
	}
	d.load(id)
	d.kept()
}

// showRound turns to another round.
func (d *desk) showRound(i int) {
	if i == d.round || i < 0 || i >= len(d.c.Rounds) {
		return
	}
	d.round, d.slips = i, nil
	d.changed()
}

// typed takes what was typed at a point: a temperature, nothing, or a dash for
// a point that can't be reached.
func (d *desk) typed(p diagram.Point, text string) {
	i := d.round
	if i < 0 {
		return
	}
	if text == "-" || text == "–" || text == "/" {
		d.forget(p)
		d.edit(say.English().Of("window.hosemap.edit-cant-reach", say.PointName(p)), func(c *cases.Case) { setReading(&c.Rounds[i], p, nil, true) })
		return
	}
	if text == "" {
		d.forget(p)
		d.edit(say.English().Of("window.hosemap.edit-cleared", say.PointName(p)), func(c *cases.Case) { setReading(&c.Rounds[i], p, nil, false) })
		return
	}
	shown, err := d.units.ParseTemp(text)
	if err != nil {
		why := say.English().Of("window.frame.slip-number")
		if !errors.Is(err, units.ErrNotANumber) {
			why = say.English().Of("window.frame.slip-range")
		}
		if d.slips == nil {
			d.slips = map[diagram.Point]slip{}
		}
		d.slips[p] = slip{text, why}
		d.changed()
		return
	}
	d.forget(p)
	d.edit(say.English().Of("window.hosemap.edit-reading", say.PointName(p), d.units.TempUnit(shown)), func(c *cases.Case) {
		r := &c.Rounds[i]
		setReading(r, p, &shown, false)
		if r.Taken.IsZero() {
			r.Taken = time.Now().UTC().Truncate(time.Second)
		}
	})
}

func (d *desk) forget(p diagram.Point) { delete(d.slips, p) }

// setReading writes a temperature, keeping the surface; without one the point
// is not known, or can't be reached.
func setReading(r *cases.Round, p diagram.Point, shown *diagram.Celsius, cantReach bool) {
	at := r.Reading(p)
	switch {
	case shown == nil && !cantReach:
		kept := r.Readings[:0]
		for _, reading := range r.Readings {
			if reading.Point != p {
				kept = append(kept, reading)
			}
		}
		r.Readings = kept
	case at == nil:
		r.Readings = append(r.Readings, cases.Reading{Point: p, ShownC: shown})
	default:
		at.ShownC = shown
		if cantReach {
			at.Surface = cases.Surface{}
		}
	}
}

// by says texts in the units chosen; the window speaks English.
func (d *desk) by() say.Speaker { return say.English().With(d.units) }
