// Package desk holds the case that is open: its edits, each kept before it returns, undo, and
// what it is judged to be while cars are simulated apart. It knows no widget and no toolkit.
package desk

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"time"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Desk holds the case that is open and everything that happens to it. The window shows what
// it says and calls it, always on one goroutine; its fields are changed by its methods only,
// but for Store, Before, Gone, Units and Odds.Invented, which the window sets.
type Desk struct {
	ctx     context.Context
	Store   *sqlite.Store
	Mind    *mind.Mind
	judging *judging
	apart   Apart
	Units   units.Set
	Odds    Odds

	Open    bool
	Case    cases.Case
	Before  string // the case that was open before this one
	Gone    string // what the case was called that was deleted just now; "": none was
	Found   evidence.Findings
	Round   int
	History cases.History
	Back    bool                                  // the last step was one back
	slips   cases.ByRound[map[diagram.Point]Slip] // what was typed in each round and can't be read
	unkept  *unkept                               // nil: the notebook has the case as it is here

	// Changed is called when what is shown is no longer true; Kept when the
	// notebook holds something else than before; Told with what a person must
	// know; Answered when there is another answer, Progressed when more of it is
	// simulated.
	Changed    func()
	Kept       func()
	Told       func(error)
	Answered   func()
	Progressed func()
}

// New is a desk without a case, for a notebook.
func New(ctx context.Context, store *sqlite.Store, apart Apart) (*Desk, error) {
	m, err := mind.New()
	if err != nil {
		return nil, err
	}
	d := &Desk{
		ctx: ctx, Store: store, Mind: m, judging: newJudging(m, apart), apart: apart, Units: units.Metric(), Round: -1,
		Changed: func() {}, Kept: func() {}, Told: func(error) {}, Answered: func() {}, Progressed: func() {},
	}
	d.judging.changed, d.judging.progressed = func() { d.Answered() }, func() { d.Progressed() }
	d.judging.gathered = func() {
		d.Found = d.Mind.Analyst.Analyse(&d.Case) // by the model's ranges now
		d.Changed()
	}
	return d, nil
}

// Load opens a case at its last round.
func (d *Desk) Load(id string) {
	c, err := d.Store.Get(d.ctx, id)
	if err != nil {
		d.Told(err)
		return
	}
	if d.Open && d.Case.ID != id {
		d.Before = d.Case.ID
	}
	d.Open, d.Gone, d.Back, d.unkept = true, "", false, nil
	d.turnTo(len(c.Rounds) - 1)
	d.take(c)
	d.count()
}

// blank is a case of which nothing is known.
func blank(opened time.Time) cases.Case {
	return cases.Case{
		Opened: opened,
		Loop:   cases.Loop{Layout: "outlet-thermostat"},
		Rounds: []cases.Round{{Label: say.English().Of("round.warm-idle"), Stage: cases.BeforeRepair}},
	}
}

// Blank reports whether the open case was begun and nothing is noted in it.
func (d *Desk) Blank() bool {
	begun := blank(d.Case.Opened)
	begun.ID = d.Case.ID
	had, err := cases.Encode(d.Case)
	want, err2 := cases.Encode(begun)
	return d.Open && err == nil && err2 == nil && bytes.Equal(had, want)
}

// Begin opens a new case, already kept.
func (d *Desk) Begin() {
	d.Add(blank(time.Now().UTC().Truncate(time.Second)), say.English().Of("window.frame.new-case-edit"))
}

// Again opens a new case of the open one's vehicle, which has come back: with its customer and its loop as fitted, where
// only the coolant's strength is to be measured anew.
func (d *Desk) Again() {
	was, err := cases.Copy(d.Case)
	if err != nil {
		d.Told(err)
		return
	}
	c := blank(time.Now().UTC().Truncate(time.Second))
	c.Vehicle, c.Customer, c.Loop, c.Site.AltitudeM = was.Vehicle, was.Customer, was.Loop, was.Site.AltitudeM
	c.Vehicle.OdometerKm, c.Loop.Coolant.VolumePercent = nil, nil
	d.Add(c, say.English().Of("window.frame.same-vehicle-edit"))
}

// Add keeps a case that was made elsewhere, and opens it.
func (d *Desk) Add(c cases.Case, what string) {
	id, err := d.Store.Put(d.ctx, c, what)
	if err != nil {
		d.Told(err)
		return
	}
	d.Load(id)
	d.Kept()
}

// Close leaves the case; none is open then.
func (d *Desk) Close() {
	d.judging.stop()
	d.Open, d.Case, d.Round, d.unkept = false, cases.Case{}, -1, nil
	d.Changed()
}

// take shows a case as the store has it, with the slips that are still in its
// rounds.
func (d *Desk) take(c cases.Case) {
	if c.ID == d.Case.ID {
		d.slips.Move(d.Case, c)
	} else {
		d.slips = cases.ByRound[map[diagram.Point]Slip]{}
	}
	d.Case = c
	d.Found = d.Mind.Analyst.Analyse(&d.Case)
	d.Round = min(max(d.Round, 0), len(c.Rounds)-1)
	if d.unkept == nil {
		h, err := d.Store.History(d.ctx, c.ID)
		if err != nil {
			d.Told(err)
		}
		d.History = h
	}
	if err := d.judging.judge(c, d.Found); err != nil {
		d.Told(err)
	}
	d.Changed()
}

// Edit changes the case and keeps it at once: when it returns, the change is
// on the disk, or the person has been told that it is on the screen alone.
func (d *Desk) Edit(what string, change func(*cases.Case)) {
	if !d.Open {
		return
	}
	next, err := cases.Copy(d.Case)
	if err != nil {
		d.Told(err)
		return
	}
	change(&next)
	if len(next.Rounds) > len(d.Case.Rounds) {
		d.slips.Begin()
	}
	next, err = d.put(what, next, append(d.changes(), change))
	if refused := (cases.Invalid{}); errors.As(err, &refused) {
		d.Told(fmt.Errorf("this was not kept, the case stands as before: %w", err))
		d.Changed()
		return
	}
	if err != nil {
		d.hold(what, next, change, err)
		return
	}
	d.written(d.kept(), next)
}

// Undo goes a step of the case back.
func (d *Desk) Undo() { d.walk(d.Store.Undo, true) }

// Redo goes a step forth again.
func (d *Desk) Redo() {
	if d.unkept == nil {
		d.walk(d.Store.Redo, false)
	}
}

// walk goes a step back or forth and turns to the round that it is about.
func (d *Desk) walk(step func(context.Context, string) (cases.Case, error), back bool) {
	if !d.Open {
		return
	}
	if d.unkept != nil {
		d.takeBack()
		return
	}
	c, err := step(d.ctx, d.Case.ID)
	if errors.Is(err, cases.ErrNothingToUndo) || errors.Is(err, cases.ErrNothingToRedo) {
		return
	}
	if err != nil {
		d.Told(err)
		return
	}
	d.Back = back
	round := d.Round
	if changed := cases.Standing(d.Case, c); changed < len(c.Rounds) {
		round = changed
	}
	if len(c.Rounds) == len(d.Case.Rounds) {
		d.turnTo(round)
	}
	d.Round = round
	d.take(c)
	d.Kept()
}

// Remove takes the case out of the notebook; Restore brings it back.
func (d *Desk) Remove() {
	if err := d.Keep(); err != nil {
		d.Told(err)
		return
	}
	if err := d.Store.Delete(d.ctx, d.Case.ID); err != nil {
		d.Told(err)
		return
	}
	d.Gone = d.Case.Title
	if d.Gone == "" {
		d.Gone = say.English().Of("window.frame.new-case")
	}
	d.Close()
	d.Kept()
}

// Restore brings back the case that was deleted last, today or long ago.
func (d *Desk) Restore() {
	id, err := d.Store.LastDeleted(d.ctx)
	if errors.Is(err, cases.ErrNotFound) {
		return
	}
	if err == nil {
		_, err = d.Store.Restore(d.ctx, id)
	}
	if err != nil {
		d.Told(err)
		return
	}
	d.Load(id)
	d.Kept()
}

// ShowRound turns to another round.
func (d *Desk) ShowRound(i int) {
	if i == d.Round || i < 0 || i >= len(d.Case.Rounds) {
		return
	}
	d.Round = i
	d.Changed()
}

// turnTo turns to a round as it is kept. What was typed in the one before, and could not be kept, stays with that.
func (d *Desk) turnTo(round int) {
	d.Round = round
	d.slips.Drop(d.Round)
}

// By says texts in the units chosen; the window speaks English.
func (d *Desk) By() say.Speaker { return say.English().With(d.Units) }

// Answer is what the open case is held to be, as far as it is known by now.
func (d *Desk) Answer() Answer { return d.judging.answer }

// Choose asks for another cause's reasons.
func (d *Desk) Choose(cause cases.Cause) { d.judging.choose(cause) }

// Progress tells how far what is simulated for the answer is, or "" where nothing is.
func (d *Desk) Progress() string { return d.judging.progress() }

// Ranged reports whether what is expected at the hoses stays as it is.
func (d *Desk) Ranged() bool { return d.judging.ranged }

// Plan is what the case as it is now is judged by.
func (d *Desk) Plan() diagnosis.Plan { return d.judging.now.Grounds.Plan }

// Stop drops what is under way for the open case.
func (d *Desk) Stop() { d.judging.stop() }
