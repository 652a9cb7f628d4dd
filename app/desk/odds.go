package desk

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

// Odds are what is believed before a case, as a person has chosen.
type Odds struct {
	Flat      bool
	Learn     Learning
	confirmed map[cases.Cause]int // of the notebook without the open case
	Invented  bool                // the notebook's cases are a demo's: they teach only who asks them to
}

// Learning is whether the notebook's confirmed cases count.
type Learning string

const (
	LearnYes   Learning = "yes"
	LearnNo    Learning = "no"
	LearnUsual Learning = "" // from enough cases on
)

// enoughCases that a notebook's own experience counts without being asked
// (judgement).
const enoughCases = 10

// Cases is how many confirmed ones the notebook has.
func (o Odds) Cases() int {
	sum := 0
	for _, n := range o.confirmed {
		sum += n
	}
	return sum
}

// Learns reports whether they count.
func (o Odds) Learns() bool {
	n := o.Cases()
	return n > 0 && (o.Learn == LearnYes || o.Learn == LearnUsual && n >= enoughCases && !o.Invented)
}

// Prior is what a case is judged by before anything is known of it.
func (o Odds) Prior() diagnosis.Prior {
	p := diagnosis.Prior{Flat: o.Flat}
	if o.Learns() {
		p.Confirmed = o.confirmed
	}
	return p
}

// Believe judges by other odds.
func (d *Desk) Believe(o Odds) {
	d.Odds = o
	d.judging.believe(o.Prior())
}

// count looks up how the notebook's other cases came out.
func (d *Desk) count() {
	store, id := d.Store, d.Case.ID
	d.apart.Start(func() {
		confirmed, err := store.Confirmed(d.ctx, id)
		d.apart.Do(func() {
			if store != d.Store || id != d.Case.ID {
				return // another case is open by now
			}
			if err != nil {
				d.Told(err)
			}
			o := d.Odds
			o.confirmed = confirmed
			d.Believe(o)
		})
	})
}
