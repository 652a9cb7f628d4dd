package share

import (
	"context"

	"loopbook/app/library"
	view "loopbook/app/ui/share"
	"loopbook/cases"
	"loopbook/cases/sqlite"
)

func givingOf(wish view.Wish) library.Giving {
	return library.Giving{Anonymous: wish.Anonymous, Hide: library.Listed(wish.Hide)}
}

// giveTo writes what a person chose in the window, and names the files.
func giveTo(ctx context.Context, store *sqlite.Store, g library.Giving, scope view.Scope, q cases.Query, id, path string) ([]string, error) {
	if scope == view.Table {
		return []string{path}, library.WriteTable(ctx, store, q, path)
	}
	ids := []string{id}
	if scope != view.This {
		var err error
		if ids, err = library.IDsOf(ctx, store, q); err != nil {
			return nil, err
		}
	}
	return g.Write(ctx, store, ids, path)
}
