package window

import (
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/app/window/compare"
	"loopbook/cases"
)

// opener opens cases, begins new ones, takes them out and back, and what was done in them.
type opener struct {
	at      bench.Bench
	parting *parting
	home    func()      // turns to the case's room
	toCase  func() bool // turns there, where that may be, and reports whether it is there
	begun   func()      // leads to where a new case is told
}

// open turns to a case from wherever it was found.
func (o *opener) open(id string) { o.openThen(id, func() {}) }

// openThen turns to a case, and does what comes then once it is there: who has something to lose may stay.
func (o *opener) openThen(id string, then func()) {
	d := o.at.Desk
	if id == d.Case.ID && d.Open {
		o.home()
		then()
		return
	}
	o.parting.then(kit.L("window.parting.anyway"), func() {
		d.Load(id)
		o.home()
		then()
	})
}

// begin begins a new case, but for who practises: it would stand unseen. A case that is still blank is one.
func (o *opener) begin() {
	if !o.toCase() {
		return
	}
	o.at.Leave()
	if o.at.Desk.Blank() && len(o.parting.screens.lost()) == 0 {
		o.begun()
		return
	}
	o.make(o.at.Desk.Begin)
}

// again begins a case of the open one's vehicle.
func (o *opener) again() {
	if !o.toCase() {
		return
	}
	o.at.Leave()
	o.make(o.at.Desk.Again)
}

// add puts a case that was made for it into the notebook, and opens it.
func (o *opener) add(c cases.Case, what string) { o.make(func() { o.at.Desk.Add(c, what) }) }

// make makes a case, and leads to where it is told: not in the one that is still open where it couldn't be kept.
func (o *opener) make(one func()) {
	o.parting.then(kit.L("window.parting.anyway"), func() {
		was := o.at.Desk.Case.ID
		if one(); o.at.Desk.Case.ID != was {
			o.begun()
		}
	})
}

// undo takes the last edit of the case back where that is seen. A case that came so, as one that was just made, isn't taken
// back with it: who wants it gone is told how.
func (o *opener) undo() {
	if !o.toCase() {
		return
	}
	d := o.at.Desk
	if _, why := d.Unkept(); !d.History.CanUndo && why == nil {
		o.at.Ask.Inform(kit.L("window.frame.nothing-to-undo"))
		return
	}
	d.Undo()
}

func (o *opener) redo() {
	if !o.toCase() {
		return
	}
	o.at.Leave()
	o.at.Desk.Redo()
}

func (o *opener) remove() {
	if !o.toCase() {
		return
	}
	o.parting.then(kit.L("window.parting.delete"), o.at.Desk.Remove)
}

func (o *opener) restore() {
	if o.toCase() {
		o.parting.then(kit.L("window.parting.anyway"), o.at.Desk.Restore)
	}
}

// compare puts the open case beside the one that was open before it.
func (o *opener) compare() {
	d := o.at.Desk
	if !d.Open || d.Before == "" || d.Before == d.Case.ID {
		o.at.Ask.Inform(kit.L("window.compare.no-other"))
		return
	}
	compare.WithOpen(o.at, d.Before)
}
