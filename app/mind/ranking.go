package mind

import (
	"context"
	"errors"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/sqlite"
)

// rankDraws is how many cars of each cause are simulated for a closed case: fewer than
// for an open one, since there are many.
const rankDraws = 40

// RankClosed keeps a guess for every closed case that has none.
func RankClosed(ctx context.Context, store *sqlite.Store, progress func(done, of int)) error {
	var keys []int64
	err := store.EachDigest(ctx, func(d *cases.Digest) {
		if d.Cause != "" && d.Guess.First == "" {
			keys = append(keys, d.Key)
		}
	})
	if err != nil {
		return err
	}
	lines, err := store.Summaries(ctx, keys)
	if err != nil {
		return err
	}
	m, err := New()
	if err != nil {
		return err
	}
	m.Crowds.Draws = rankDraws
	for i, line := range lines {
		progress(i, len(lines))
		if err := m.rankOne(ctx, store, line.ID); err != nil && !errors.Is(err, cases.ErrNotFound) { // that one was deleted meanwhile
			return err
		}
	}
	return ctx.Err()
}

// rankOne judges the case by what was known before its repair. One of which nothing was
// known gets no guess.
func (m *Mind) rankOne(ctx context.Context, store *sqlite.Store, id string) error {
	c, err := store.Get(ctx, id)
	if err != nil {
		return err
	}
	if diagnosis.StageOf(&c) != cases.BeforeRepair {
		return nil
	}
	t, err := m.weighWhole(ctx, c)
	if err != nil || t.Ranking.Blank {
		return err
	}
	return store.SetGuess(ctx, id, c.Verdict.Cause, GuessOf(t.Ranking, c.Verdict.Cause))
}
