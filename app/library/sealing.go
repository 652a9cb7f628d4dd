package library

import (
	"bytes"
	"context"
	"errors"
	"slices"

	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/cases/sqlite"
)

// SealedCase is a case that came with a sealed class set and wasn't answered yet, or an error that is cases.ErrNotFound.
func SealedCase(ctx context.Context, store *sqlite.Store, id string) (cases.Bundle, error) {
	file, err := store.Sealed(ctx, id)
	if err != nil {
		return cases.Bundle{}, err
	}
	return exchange.Read("sealed case "+id, bytes.NewReader(file))
}

// Unseal takes a sealed case in among the notebook's others, and tells whether there was one.
func Unseal(ctx context.Context, store *sqlite.Store, id string) (bool, error) {
	b, err := SealedCase(ctx, store, id)
	if errors.Is(err, cases.ErrNotFound) {
		return false, nil
	}
	if err == nil {
		_, err = store.Import(ctx, b, "unsealed")
	}
	if err == nil {
		err = store.DropSealed(ctx, id)
	}
	return err == nil, err
}

// UnsealLoose unseals what no class set leads to any more: nobody could come to it otherwise.
func UnsealLoose(ctx context.Context, store *sqlite.Store) error {
	ids, err := store.SealedIDs(ctx)
	if err != nil || len(ids) == 0 {
		return err
	}
	classes, err := store.Classes(ctx)
	for _, id := range ids {
		led := slices.ContainsFunc(classes, func(c cases.Class) bool { return slices.Contains(c.Cases, id) })
		if err == nil && !led {
			_, err = Unseal(ctx, store, id)
		}
	}
	return err
}
