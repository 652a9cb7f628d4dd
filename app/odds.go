package main

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

// odds are what is believed before a case, as a person has chosen.
type odds struct {
	flat      bool
	learn     learning
	confirmed map[cases.Cause]int // of the notebook without the open case
	invented  bool                // the notebook's cases are a demo's: they teach only who asks them to
}

// learning is whether the notebook's confirmed cases count.
type learning string

const (
	learnYes   learning = "yes"
	learnNo    learning = "no"
	learnUsual learning = "" // from enough cases on
)

// enoughCases that a notebook's own experience counts without being asked
// (judgement).
const enoughCases = 10

func (o odds) cases() int {
	sum := 0
	for _, n := range o.confirmed {
		sum += n
	}
	return sum
}

func (o odds) learns() bool {
	n := o.cases()
	return n > 0 && (o.learn == learnYes || o.learn == learnUsual && n >= enoughCases && !o.invented)
}

func (o odds) prior() diagnosis.Prior {
	p := diagnosis.Prior{Flat: o.flat}
	if o.learns() {
		p.Confirmed = o.confirmed
	}
	return p
}

// believe judges by other odds.
func (d *desk) believe(o odds) {
	d.odds = o
	d.judging.believe(o.prior())
}

// count looks up how the notebook's other cases came out.
func (d *desk) count() {
	store, id := d.store, d.c.ID
	d.apart.Start(func() {
		confirmed, err := store.Confirmed(d.ctx, id)
		d.apart.Do(func() {
			if store != d.store || id != d.c.ID {
				return // another case is open by now
			}
			if err != nil {
				d.told(err)
			}
			o := d.odds
			o.confirmed = confirmed
			d.believe(o)
		})
	})
}
