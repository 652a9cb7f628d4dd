// Package invented dresses measured cars as a shop's cases: vehicles, owners, what
// they say, dates, verdicts, notes. Nothing in it is real; it is for trying the
// notebook at scale.
package invented

import (
	"fmt"
	"math/rand"
	"strings"
	"time"

	"loopbook/cases"
)

// Shop dresses cases one after the other: the same seed dresses the same cases alike.
type Shop struct {
	seed   int64
	n      int
	from   time.Time
	every  time.Duration
	garage []owned // vehicles that may come again
}

// owned is a vehicle with its owner, as seen last.
type owned struct {
	vehicle  cases.Vehicle
	customer cases.Customer
	layout   string
}

// NewShop opens a shop whose cases are spread evenly over the years from a day on.
func NewShop(seed int64, from time.Time, years float64, total int) *Shop {
	span := time.Duration(years * 365.25 * 24 * float64(time.Hour))
	return &Shop{seed: seed, from: from, every: span / time.Duration(max(total, 1))}
}

// The parts of a shop's cases (judgement).
const (
	openPart      = 0.08 // not settled yet
	againPart     = 0.12 // of a vehicle that was there before
	confirmedPart = 0.8  // of the settled ones
	garageSize    = 400
)

// Dress gives the case an owner, a vehicle and a story. What is measured stays; its
// verdict is the truth, or is taken away where the case is still open.
func (s *Shop) Dress(c *cases.Case) {
	r := rand.New(rand.NewSource(s.seed*7_919 + int64(s.n)))
	opened := s.from.Add(time.Duration(s.n)*s.every + time.Duration(r.Int63n(int64(s.every)+1))).UTC().Truncate(time.Minute)
	move(c, opened)
	c.ID = fmt.Sprintf("INVENTED-%d-%07d", s.seed, s.n)
	s.n++
	s.bring(r, c)
	story(r, c)
	settle(r, c)
}

// move sets the case's times, their distances kept.
func move(c *cases.Case, opened time.Time) {
	by := opened.Sub(c.Opened)
	for i := range c.Rounds {
		if t := &c.Rounds[i].Taken; !t.IsZero() {
			*t = t.Add(by)
		}
	}
	c.Opened = opened
}

// bring draws a vehicle, or one that was there before and has the same loop.
func (s *Shop) bring(r *rand.Rand, c *cases.Case) {
	if r.Float64() < againPart {
		for range 20 {
			if len(s.garage) == 0 {
				break
			}
			o := &s.garage[r.Intn(len(s.garage))]
			if o.layout != c.Loop.Layout {
				continue
			}
			km := *o.vehicle.OdometerKm + 500 + float64(r.Intn(15_000))
			o.vehicle.OdometerKm = &km
			c.Vehicle, c.Customer = o.vehicle, o.customer
			return
		}
	}
	c.Vehicle, c.Customer = vehicle(r, c), owner(r)
	o := owned{vehicle: c.Vehicle, customer: c.Customer, layout: c.Loop.Layout}
	if len(s.garage) < garageSize {
		s.garage = append(s.garage, o)
		return
	}
	s.garage[r.Intn(garageSize)] = o
}

// vehicle goes with what was measured: the layout tells the make's habit.
func vehicle(r *rand.Rand, c *cases.Case) cases.Vehicle {
	maker := makers[r.Intn(len(makers))]
	year := c.Opened.Year() - 1 - r.Intn(16)
	km := float64(r.Intn(22_000) + (c.Opened.Year()-year)*(6_000+r.Intn(14_000)))
	v := cases.Vehicle{
		Make: maker, Model: pick(r, models), Year: &year, Motive: c.Vehicle.Motive, OdometerKm: &km,
		Engine: fmt.Sprintf("%d.%d %s-%d%d", 1+r.Intn(2), r.Intn(10), maker[:2], r.Intn(4)+1, r.Intn(3)),
	}
	return v
}

func owner(r *rand.Rand) cases.Customer {
	name := pick(r, first) + " " + pick(r, last)
	return cases.Customer{Name: name, Contact: strings.ToLower(strings.ReplaceAll(name, " ", ".")) + "@example.org"}
}

// settle says what was found, or leaves the case open.
func settle(r *rand.Rand, c *cases.Case) {
	if r.Float64() < openPart {
		c.Verdict = cases.Verdict{}
		return
	}
	c.Verdict.Note = pick(r, notes)
	if r.Float64() < confirmedPart {
		c.Verdict.ConfirmedBy = pick(r, confirmations)
		if len(c.Tests) > 0 {
			c.Verdict.ConfirmedBy = string(c.Tests[len(c.Tests)-1].Kind)
		}
	}
	c.Lesson = ""
	if fits := lessons[c.Verdict.Cause]; len(fits) > 0 {
		c.Lesson = pick(r, fits)
	}
}

func pick(r *rand.Rand, list []string) string { return list[r.Intn(len(list))] }
