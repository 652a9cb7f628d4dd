package main

import (
	"context"

	"loopbook/cases"
	"loopbook/cases/experience"
	"loopbook/cases/query"
	"loopbook/cases/sqlite"
)

// shopHistory gathers what the notebook's own cases say.
func shopHistory(ctx context.Context, store *sqlite.Store) (experience.History, error) {
	t := experience.NewTally()
	if err := store.EachDigest(ctx, t.Look); err != nil {
		return experience.History{}, err
	}
	return t.History(), nil
}

// searchFor is the search that finds the closed cases of a number.
func searchFor(where []cases.Condition) string {
	return query.Write(append([]cases.Condition{{Field: cases.ByStage, Words: []string{cases.StageClosed}}}, where...))
}
