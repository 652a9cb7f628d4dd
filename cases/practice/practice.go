// Package practice holds the rules of practising on a closed case: the trainee sees
// the complaint, buys evidence for its minutes, and names a cause with how sure they
// are. It judges nothing itself.
package practice

import (
	"errors"
	"fmt"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
)

// Kind says what sort of evidence an item is.
type Kind string

// The kinds: one point read in one round, the scan tool and the gauge in a round, a
// log of the warm-up, a workshop check.
const (
	Point Kind = "point"
	Dash  Kind = "dash"
	Log   Kind = "log"
	Test  Kind = "test"
)

// Item is a piece of evidence that the case holds.
type Item struct {
	Kind    Kind
	At      int           // of the round, the log or the test
	Point   diagram.Point // of a Point
	Check   cases.TestKind
	Minutes float64
}

// Costs are what items cost in minutes.
type Costs struct {
	Point, Dash, Log float64
	Tests            map[cases.TestKind]float64
}

// Errors of a session.
var (
	ErrOpen   = errors.New("the case has no verdict yet: nobody could tell who is right")
	ErrNoItem = errors.New("the case doesn't hold that evidence")
	ErrTwice  = errors.New("that is bought already")
	ErrBare   = errors.New("the case holds nothing that was measured before the repair")
)

// Session is one trainee on one case. Its case is never changed.
type Session struct {
	whole  cases.Case
	items  []Item
	bought []Item
}

// Begin begins to practise on a closed case.
func Begin(c cases.Case, costs Costs) (*Session, error) {
	if c.Verdict.Cause == "" {
		return nil, ErrOpen
	}
	s := &Session{whole: c, items: itemsOf(&c, costs)}
	if len(s.items) == 0 {
		return nil, ErrBare
	}
	return s, nil
}

func itemsOf(c *cases.Case, costs Costs) []Item {
	var out []Item
	for i := range c.Rounds {
		r := &c.Rounds[i]
		if r.Stage == cases.AfterRepair {
			continue
		}
		if r.EctC != nil || r.Gauge != "" || r.Fan == cases.FanOn || r.Fan == cases.FanOff {
			out = append(out, Item{Kind: Dash, At: i, Minutes: costs.Dash})
		}
		seen := map[diagram.Point]bool{}
		for _, reading := range r.Readings {
			if last := r.Reading(reading.Point); last.ShownC != nil && !seen[reading.Point] {
				seen[reading.Point] = true
				out = append(out, Item{Kind: Point, At: i, Point: reading.Point, Minutes: costs.Point})
			}
		}
	}
	for i := range c.Logs {
		if c.Logs[i].Stage != cases.AfterRepair && len(c.Logs[i].EctC) > 0 {
			out = append(out, Item{Kind: Log, At: i, Minutes: costs.Log})
		}
	}
	for i := range c.Tests {
		if t := &c.Tests[i]; t.Stage != cases.AfterRepair && !t.Bare() {
			out = append(out, Item{Kind: Test, At: i, Check: t.Kind, Minutes: costs.Tests[t.Kind]})
		}
	}
	return out
}

// Copy is the session as it stands, for who judges it apart.
func (s *Session) Copy() *Session {
	c := *s
	c.bought = slices.Clone(s.bought)
	return &c
}

// Upto is the session as it stood after the first n items.
func (s *Session) Upto(n int) *Session {
	c := s.Copy()
	c.bought = c.bought[:n]
	return c
}

// Items are all that can be bought, in the case's order.
func (s *Session) Items() []Item { return slices.Clone(s.items) }

// Bought are the items bought so far, in the order of buying.
func (s *Session) Bought() []Item { return slices.Clone(s.bought) }

// Has reports whether the item is bought.
func (s *Session) Has(i Item) bool { return slices.Contains(s.bought, i) }

// Buy opens an item.
func (s *Session) Buy(i Item) error {
	switch {
	case !slices.Contains(s.items, i):
		return fmt.Errorf("%s %d %s: %w", i.Kind, i.At, i.Point, ErrNoItem)
	case s.Has(i):
		return ErrTwice
	}
	s.bought = append(s.bought, i)
	return nil
}

// Minutes is what was spent so far.
func (s *Session) Minutes() (sum float64) {
	for _, i := range s.bought {
		sum += i.Minutes
	}
	return sum
}

// Truth is what it turned out to be.
func (s *Session) Truth() cases.Cause { return s.whole.Verdict.Cause }

// Whole is the case with all that it holds.
func (s *Session) Whole() cases.Case { return s.whole }

// Seen is the case as the trainee knows it now.
func (s *Session) Seen() cases.Case { return s.With(s.bought) }
