package practice

import (
	"slices"

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
	lesson *lesson
	end    func() // when no case is left

	class string   // that is gone through; empty: none
	queue []string // its cases still to come
	of    int      // how many it has that can be practised
}

// begin goes through the cases of a class that can be practised.
func (c *course) begin(name string) {
	store := c.at.Desk.Store
	list, err := store.Classes(c.at.Ctx)
	if err != nil {
		c.at.Ask.Tell(err)
		return
	}
	retired, err := store.Retired(c.at.Ctx)
	if err != nil {
		c.at.Ask.Tell(err)
		return
	}
	for _, one := range list {
		if one.Name == name {
			ids := slices.DeleteFunc(slices.Clone(one.Cases), func(id string) bool {
				_, can := c.toPractise(id)
				return retired[id] || !can
			})
			c.of = len(ids)
			c.goThrough(name, ids)
		}
	}
}

// alone practises on a case of no class.
func (c *course) alone(one cases.Case) {
	c.class, c.queue = "", nil
	c.lesson.begin(one, place{})
}

// next goes on to the next case.
func (c *course) next() { c.goThrough(c.class, c.queue) }

// toPractise is a case of the notebook, and whether it is there and can be practised.
func (c *course) toPractise(id string) (cases.Case, bool) {
	one, err := c.at.Desk.Store.Get(c.at.Ctx, id)
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

// place says which case of a class it is, of how many.
func (c *course) place() place {
	if c.class == "" {
		return place{}
	}
	left := len(c.queue)
	return place{class: c.class, words: kit.L("window.practice.place", c.of-left, c.of, c.class), left: left}
}
