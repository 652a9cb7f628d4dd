package library

import (
	"context"

	"loopbook/cases"
	"loopbook/cases/experience"
	"loopbook/cases/query"
	"loopbook/cases/sqlite"
)

// History gathers what the notebook's own cases say, with bands of the odometer that wide.
func History(ctx context.Context, store *sqlite.Store, bandKm float64) (experience.History, error) {
	t := experience.NewTally(bandKm)
	if err := store.EachDigest(ctx, t.Look); err != nil {
		return experience.History{}, err
	}
	return t.History(), nil
}

// SearchFor is the search that finds the closed cases of a number.
func SearchFor(where []cases.Condition) string {
	return query.Write(append([]cases.Condition{
		{Field: cases.ByStage, Words: []string{cases.StageClosed}},
		{Field: cases.ByTag, Not: true, Words: []string{cases.TaughtTag}},
	}, where...))
}
