package practice

import (
	"context"
	"math/rand"
	"time"

	"loopbook/app/mind"
	view "loopbook/app/ui/practice"
	"loopbook/cases"
	"loopbook/cases/invented"
	"loopbook/cases/practice"
	cars "loopbook/cases/trial"
)

// simulated is a car of the plain model with that difficulty: how likely the program
// holds the truth, all evidence at hand but the simulation of its loop. A hard one misleads, but not for good: what leads
// nowhere with all its evidence teaches nobody.
func simulated(ctx context.Context, k *mind.Coach, seed int64, how view.Difficulty) (cases.Case, bool) {
	const tries = 60
	r := rand.New(rand.NewSource(seed))
	for range tries {
		c := oneInvented(r.Int63())
		p := k.Mind.Guess(c).TruthP
		fits := map[view.Difficulty]bool{view.Easy: p >= 0.7, view.Usual: p >= 0.25 && p < 0.7, view.Hard: p < 0.25}[how]
		if _, err := practice.Begin(c, k.Costs); err != nil || !fits {
			continue
		}
		if how == view.Hard {
			if fair, err := k.Fair(ctx, c); err != nil || !fair {
				continue
			}
		}
		return c, true
	}
	return cases.Case{}, false
}

// oneInvented is one car with every check, for practice.
func oneInvented(seed int64) cases.Case {
	list := cars.Cases(seed, 1, cars.Everything)
	invented.NewShop(seed, time.Now(), 0, 1).Dress(&list[0])
	return list[0]
}
