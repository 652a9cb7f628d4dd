// Package library is the notebook as the program uses it: where its file lies and how it is
// opened, its demo, how cases are taken in and given out, the smaller copies of its pictures,
// and what its cases say together. It prints nothing and knows no widget.
package library

import (
	"context"
	"time"

	"loopbook/cases/sqlite"
)

// Open opens the notebook at path, or the user's own where that is empty, and makes one
// where there is none.
func Open(ctx context.Context, path string) (*sqlite.Store, error) {
	if path == "" {
		own, err := OwnPath()
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
