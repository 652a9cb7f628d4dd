package library

import (
	"context"

	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// Taught is the copy of a case that is taught from.
type Taught struct {
	cases.Met
	Plain string // its title, where the case's own would have told the answer; else ""
}

// Teach puts an anonymous copy of a case beside it, to be taught from. Where the notebook has one already, that one
// stays as it is, whatever a trainer made of it, and is the one that is met; so is a copy that is to be copied.
func Teach(ctx context.Context, store *sqlite.Store, id string, hide []string) (t Taught, err error) {
	d, err := store.Digest(ctx, id)
	if err != nil {
		return t, err
	}
	if d.Taught() {
		t.Meeting, t.ID = cases.MeetsSame, id
		return t, nil
	}
	b, _, err := Giving{Anonymous: true, Hide: hide}.Bundle(ctx, store, id)
	if err != nil {
		return t, err
	}
	told := tells(&b.Case)
	if told {
		b.Case.Title = plainTitle(&b.Case)
	}
	b.Case.Tags = append(b.Case.Tags, cases.TaughtTag)
	b.Case.Title = "Taught: " + b.Case.Title // the list shows both
	if t.Met, err = store.Import(ctx, b, "taught copy"); err == nil && t.Meeting == cases.MeetsNone && told {
		t.Plain = b.Case.Title
	}
	return t, err
}
