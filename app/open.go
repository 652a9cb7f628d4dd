package main

import (
	"context"
	"time"

	"loopbook/cases/sqlite"
)

// openNotebook opens the notebook at path, or the user's own.
func openNotebook(ctx context.Context, path string) (*sqlite.Store, error) {
	if path == "" {
		own, err := ownNotebook()
		if err != nil {
			return nil, err
		}
		path = own
	}
	more, err := newEnricher()
	if err != nil {
		return nil, err
	}
	store, err := sqlite.Open(ctx, path, time.Now)
	if err == nil {
		store.Enrich(more.add)
	}
	return store, err
}
