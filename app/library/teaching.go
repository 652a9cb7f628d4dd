package library

import (
	"context"

	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// Teach puts an anonymous copy of a case beside it, to be taught from. Where the notebook has one already, that one
// stays as it is, whatever a trainer made of it, and is the one that is met; so is a copy that is to be copied.
func Teach(ctx context.Context, store *sqlite.Store, id string, hide []string) (cases.Met, error) {
	d, err := store.Digest(ctx, id)
	if err != nil {
		return cases.Met{}, err
	}
	if d.Taught() {
		return cases.Met{Meeting: cases.MeetsSame, ID: id}, nil
	}
	b, _, err := Giving{Anonymous: true, Hide: hide}.Bundle(ctx, store, id)
	if err != nil {
		return cases.Met{}, err
	}
	b.Case.Tags = append(b.Case.Tags, cases.TaughtTag)
	b.Case.Title = "Taught: " + b.Case.Title // the list shows both
	return store.Import(ctx, b, "taught copy")
}
