package library

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"

	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// WriteClass writes a class set for another notebook: its cases in their order, anonymous but for those that are
// taught from, which are so already. Those that are gone from the notebook are left out, and a case whose taught copy
// is in the set too: the copy is what was made for a class, and a file holds an id once. One that is sealed here leaves as
// it came.
func WriteClass(ctx context.Context, store *sqlite.Store, c cases.Class, path string) error {
	var ids []string
	taught := map[string]bool{}
	for _, id := range c.Cases {
		d, err := store.Digest(ctx, id)
		shut := false
		if errors.Is(err, cases.ErrNotFound) {
			_, err = store.Sealed(ctx, id)
			shut = err == nil
		}
		if errors.Is(err, cases.ErrNotFound) {
			continue
		}
		if err != nil {
			return err
		}
		ids, taught[id] = append(ids, id), shut || d.Taught()
	}
	if len(ids) == 0 {
		return errNone
	}
	return collection(store, path, c, func() (cases.Bundle, error) {
		for len(ids) > 0 {
			id := ids[0]
			ids = ids[1:]
			b, err := ofClass(ctx, store, id, taught[id])
			if _, copied := taught[b.Case.ID]; err == nil && copied && !taught[id] {
				continue
			}
			return whole(b), err
		}
		return cases.Bundle{}, io.EOF
	})
}

// ofClass is a case of a class set as it leaves.
func ofClass(ctx context.Context, store *sqlite.Store, id string, bare bool) (cases.Bundle, error) {
	b, _, err := Giving{Anonymous: !bare}.Bundle(ctx, store, id)
	if errors.Is(err, cases.ErrNotFound) {
		return SealedCase(ctx, store, id)
	}
	return b, err
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
