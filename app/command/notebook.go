package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"

	"loopbook/app/library"
	"loopbook/cases/sqlite"
)

// notebookFlag adds --notebook to a command.
func notebookFlag(set *flag.FlagSet) *string {
	return set.String("notebook", "", "the notebook's file")
}

// openExisting opens a notebook to read from: one that is named must be there,
// or a slip of the pen would make an empty one.
func openExisting(ctx context.Context, path string) (*sqlite.Store, error) {
	if path != "" {
		if _, err := os.Stat(path); err != nil {
			return nil, fmt.Errorf("notebook %s: %w", path, errors.Unwrap(err))
		}
	}
	return library.Open(ctx, path)
}

// openRefreshed opens a notebook to read from, with all that its statistics need.
func openRefreshed(ctx context.Context, c Console, path string) (*sqlite.Store, error) {
	store, err := openExisting(ctx, path)
	if err != nil {
		return nil, err
	}
	if err := store.Refresh(ctx, func(left int) { fmt.Fprintf(c.Err, "\rbringing the notebook up to date: %d left ", left) }); err != nil {
		store.Close()
		return nil, err
	}
	return store, nil
}
