package diagnosis

import (
	"context"
	"sync"

	"loopbook/diagram/physics/ensemble"
)

// UsualDraws is how many cars of each cause a case is judged by.
const UsualDraws = 200

// keptCrowds is how many crowds are kept: some cases looked at in turn, with their
// two stages and their logs.
const keptCrowds = 12

// Crowds simulates a plan's crowd once and keeps the last few. It may be used
// from several goroutines.
type Crowds struct {
	Draws int // of each cause; 0: UsualDraws

	mu    sync.Mutex
	kept  map[string]*ensemble.Ensemble
	order []string // of keys, the oldest first
}

// Kept is the plan's crowd if it is there already, or nil.
func (k *Crowds) Kept(p Plan) *ensemble.Ensemble {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.kept[p.Setting.Key()]
}

// Healthy is the plan's crowd, or one of healthy cars alone, or nil.
func (k *Crowds) Healthy(p Plan) *ensemble.Ensemble {
	if e := k.Kept(p); e != nil {
		return e
	}
	return k.Kept(p.Healthy())
}

// Get is the plan's crowd, simulated on all cores where it isn't kept; soFar, if
// not nil, tells from time to time of its first cars and what part of it they are. When ctx ends, Get gives up
// with its error and keeps nothing.
func (k *Crowds) Get(ctx context.Context, p Plan, soFar func(first *ensemble.Ensemble, part float64)) (*ensemble.Ensemble, error) {
	if e := k.Kept(p); e != nil {
		return e, nil
	}
	draws := k.Draws
	if draws == 0 {
		draws = UsualDraws
	}
	draws = max(draws/max(p.share, 1), 1)
	e, err := ensemble.Run(ctx, p.Setting, draws, soFar)
	if err == nil {
		k.keep(p.Setting.Key(), e)
	}
	return e, err
}

func (k *Crowds) keep(key string, e *ensemble.Ensemble) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.kept == nil {
		k.kept = map[string]*ensemble.Ensemble{}
	}
	if k.kept[key] == nil {
		k.order = append(k.order, key)
	}
	k.kept[key] = e
	if len(k.order) > keptCrowds {
		delete(k.kept, k.order[0])
		k.order = k.order[1:]
	}
}
