package practice

import (
	"errors"
	"slices"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/practice"
)

// course is a class that is gone through, case by case.
type course struct {
	at     bench.Bench
	coach  *mind.Coach
	known  *glances
	lesson *lesson
	end    func()        // when no case is left
	who    func() string // practises

	class string   // that is gone through; empty: none
	queue []string // its cases still to come
	of    int      // how many it has that can be practised
}

// begin goes through the cases of a class that can be practised.
func (c *course) begin(name string) {
	one, err := classNamed(c.at, name)
	var ids []string
	if err == nil {
		ids, err = c.known.fit(one.Cases)
	}
	var done map[string]int
	if err == nil {
		done, err = c.answered(name)
	}
	if err != nil {
		c.at.Ask.Tell(err)
		return
	}
	c.of = len(ids)
	c.goThrough(name, toCome(ids, done))
}

// alone practises on a case of no class.
func (c *course) alone(one cases.Case) {
	c.class, c.queue = "", nil
	c.lesson.begin(one, place{})
}

// next goes on to the next case.
func (c *course) next() { c.goThrough(c.class, c.queue) }

// answered is how often who practises has answered each case of a class.
func (c *course) answered(class string) (map[string]int, error) {
	done, who := map[string]int{}, c.who()
	if who == "" {
		return done, nil // nothing is kept of them
	}
	results, err := c.at.Desk.Store.Results(c.at.Ctx, class)
	for _, r := range results {
		if r.Trainee == who {
			done[r.CaseID]++
		}
	}
	return done, err
}

// toCome are the cases that were answered least often: whoever comes back goes on, and who is through begins anew.
func toCome(ids []string, done map[string]int) []string {
	if len(ids) == 0 {
		return nil
	}
	least := done[ids[0]]
	for _, id := range ids {
		least = min(least, done[id])
	}
	return slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return done[id] > least })
}

// toPractise is a case of the notebook or of a sealed set, and whether it is there and can be practised.
func (c *course) toPractise(id string) (cases.Case, bool) {
	one, err := c.at.Desk.Store.Get(c.at.Ctx, id)
	if errors.Is(err, cases.ErrNotFound) {
		var sealed cases.Bundle
		sealed, err = library.SealedCase(c.at.Ctx, c.at.Desk.Store, id)
		one = sealed.Case
	}
	if err == nil {
		_, err = practice.Begin(one, c.coach.Costs)
	}
	return one, err == nil
}

// goThrough begins the next of a class's cases that is still there.
func (c *course) goThrough(class string, ids []string) {
	for i, id := range ids {
		if one, can := c.toPractise(id); can {
			c.class, c.queue = class, ids[i+1:]
			c.lesson.begin(one, c.place())
			return
		}
	}
	c.end()
}

// listed reports whether a case that is still to come stands in the list, with its answer: of a set that was handed over
// shut none does.
func (c *course) listed() bool {
	return slices.ContainsFunc(c.queue, func(id string) bool {
		_, err := c.at.Desk.Store.Get(c.at.Ctx, id)
		return err == nil
	})
}

// place says which case of a class it is, of how many.
func (c *course) place() place {
	if c.class == "" {
		return place{}
	}
	left := len(c.queue)
	return place{class: c.class, words: kit.L("window.practice.place", c.of-left, c.of, c.class), left: left}
}
