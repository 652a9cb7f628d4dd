package library

import (
	"context"
	"fmt"
	"slices"

	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/sqlite"
)

// WriteClass writes a class set for another notebook: its cases in their order, anonymous but for those that are
// taught from, which are so already. Those that are gone from the notebook are left out, and a case whose taught copy
// is in the set too: the copy is what was made for a class, and a file holds an id once.
func WriteClass(ctx context.Context, store *sqlite.Store, c cases.Class, path string) error {
	ids := slices.Clone(c.Cases)
	ids = slices.DeleteFunc(ids, func(id string) bool {
		_, err := store.Digest(ctx, id)
		return err != nil
	})
	if len(ids) == 0 {
		return errNone
	}
	return collection(ctx, store, ids, path, c.Name, func(ctx context.Context, store *sqlite.Store, id string) (cases.Bundle, anonymous.Preview, error) {
		d, err := store.Digest(ctx, id)
		if err != nil {
			return cases.Bundle{}, anonymous.Preview{}, err
		}
		b, p, err := Giving{Anonymous: !d.Taught()}.Bundle(ctx, store, id)
		if err == nil && !d.Taught() && slices.Contains(ids, b.Case.ID) {
			err = errTwice
		}
		return b, p, err
	})
}

// KeepClasses keeps the class sets that came with cases, and tells them as they are kept: under another name where
// the notebook has one of theirs with other cases.
func KeepClasses(ctx context.Context, store *sqlite.Store, came []cases.Class) (kept []cases.Class, err error) {
	for _, c := range came {
		have, err := store.Classes(ctx)
		if err != nil {
			return kept, err
		}
		other := func(name string) bool {
			return slices.ContainsFunc(have, func(h cases.Class) bool { return h.Name == name && !slices.Equal(h.Cases, c.Cases) })
		}
		name := c.Name
		for n := 2; other(c.Name); n++ {
			c.Name = fmt.Sprintf("%s (%d)", name, n)
		}
		if err := store.SaveClass(ctx, c); err != nil {
			return kept, err
		}
		kept = append(kept, c)
	}
	return kept, nil
}
