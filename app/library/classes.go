package library

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// WriteClass writes a class set for another notebook: its cases in their order, anonymous but for those that are
// taught from, which are so already. Those that are gone from the notebook or out of practice are left out, and a case whose
// taught copy is in the set too: the copy is what was made for a class, and a file holds an id once. One that is sealed here leaves as
// it came.
func WriteClass(ctx context.Context, store *sqlite.Store, c cases.Class, path string) error {
	retired, err := store.Retired(ctx)
	if err != nil {
		return err
	}
	sealed, err := store.SealedIDs(ctx)
	if err != nil {
		return err
	}
	var ids []string
	taught := map[string]bool{}
	for _, id := range c.Cases {
		if retired[id] {
			continue
		}
		d, err := store.Digest(ctx, id)
		gone := errors.Is(err, cases.ErrNotFound)
		shut := gone && slices.Contains(sealed, id)
		switch {
		case gone && !shut:
			continue
		case err != nil && !gone:
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

// classes keeps class sets; *sqlite.Store does.
type classes interface {
	Classes(ctx context.Context) ([]cases.Class, error)
	SaveClass(ctx context.Context, c cases.Class) error
}

// keepClasses keeps the class sets that came with cases, and tells them as they are kept: under another name where
// the notebook has one of theirs with other cases. One that has only grown at its end, or of which the beginning came the last time,
// is the same one.
func keepClasses(ctx context.Context, store classes, came []cases.Class) (kept []cases.Class, err error) {
	for _, c := range came {
		have, err := store.Classes(ctx)
		if err != nil {
			return kept, err
		}
		other := func(h cases.Class) bool { return h.Name == c.Name && !begins(h.Cases, c.Cases) }
		name := c.Name
		for n := 2; slices.ContainsFunc(have, other); n++ {
			c.Name = numbered(name, n)
		}
		if err := store.SaveClass(ctx, c); err != nil {
			return kept, err
		}
		kept = append(kept, c)
	}
	return kept, nil
}

// begins reports whether all begins with some.
func begins(some, all []string) bool {
	return len(some) <= len(all) && slices.Equal(some, all[:len(some)])
}

// numbered is a class set's name where others have it already.
func numbered(name string, n int) string { return fmt.Sprintf("%s (%d)", name, n) }

// unnumbered is the name that a class set had before it was numbered.
func unnumbered(name string) string {
	at := strings.LastIndex(name, " (")
	if at < 0 {
		return name
	}
	if n, err := strconv.Atoi(strings.TrimSuffix(name[at+2:], ")")); err != nil || name != numbered(name[:at], n) {
		return name
	}
	return name[:at]
}
