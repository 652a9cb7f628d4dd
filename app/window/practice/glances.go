package practice

import (
	"slices"
	"time"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/app/window/bench"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/practice"
)

// glance is what is to be known of a case that nobody practises on.
type glance struct {
	changed time.Time // since when it is so; of one that is shut never
	shut    bool      // it came with a sealed set and wasn't answered yet
	title   string    // of one that isn't shut
	can     bool      // be practised
}

// glances remember what was found out about cases: each is read whole for it, a sealed one with its pictures.
type glances struct {
	at    bench.Bench
	coach *mind.Coach
	had   map[string]glance
}

// of looks at a case, and reports whether it is there; sealed are the ids of those that are shut.
func (g *glances) of(id string, sealed []string) (glance, bool) {
	var now glance
	if d, err := g.at.Desk.Store.Digest(g.at.Ctx, id); err == nil {
		now.changed = d.Changed
	} else { // or an older program's notebook is being brought up to date
		now.shut = slices.Contains(sealed, id)
	}
	if had, ok := g.had[id]; ok && had.shut == now.shut && had.changed.Equal(now.changed) {
		return had, true
	}
	c, err := g.read(id, now.shut)
	if err != nil {
		return now, now.shut
	}
	if !now.shut {
		now.title = words.Title(c)
	}
	_, err = practice.Begin(c, g.coach.Costs)
	now.can = err == nil
	if now.shut || !now.changed.IsZero() {
		g.had[id] = now
	}
	return now, true
}

func (g *glances) read(id string, shut bool) (cases.Case, error) {
	if shut {
		b, err := library.SealedCase(g.at.Ctx, g.at.Desk.Store, id)
		return b.Case, err
	}
	return g.at.Desk.Store.Get(g.at.Ctx, id)
}

// forget is for another notebook.
func (g *glances) forget() { g.had = map[string]glance{} }

// fit are those of the cases that can be practised.
func (g *glances) fit(ids []string) ([]string, error) {
	retired, err := g.at.Desk.Store.Retired(g.at.Ctx)
	if err != nil {
		return nil, err
	}
	sealed, err := g.at.Desk.Store.SealedIDs(g.at.Ctx)
	if err != nil {
		return nil, err
	}
	return g.fitOf(ids, retired, sealed), nil
}

// fitOf is fit where it is known which cases are retired and which are sealed.
func (g *glances) fitOf(ids []string, retired map[string]bool, sealed []string) []string {
	return slices.DeleteFunc(slices.Clone(ids), func(id string) bool {
		one, _ := g.of(id, sealed)
		return retired[id] || !one.can
	})
}
