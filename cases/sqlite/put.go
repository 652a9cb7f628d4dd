package sqlite

import (
	"context"
	"crypto/rand"
	"database/sql"
	"errors"
	"fmt"
	"slices"

	"github.com/oklog/ulid/v2"

	"loopbook/cases"
)

// Put keeps c as a new revision; what names the edit in the history, in a
// short word. It answers the case's ID, which is a new ULID where c has none.
// The same content as before makes no revision. An edit after Undo drops the
// revisions that Redo would have led to; an edit of a deleted case brings it
// back. A case that the format refuses is a cases.Invalid.
func (s *Store) Put(ctx context.Context, c cases.Case, what string) (id string, err error) {
	return answer(ctx, s.tx, "keeping the case", func(tx *sql.Tx) (string, error) { return s.put(ctx, tx, c, what) })
}

// PutOver is Put for a case that was edited from where it stood among its revisions then. Where another program has
// taken it elsewhere by now, that is cases.ErrChanged, and nothing is kept.
func (s *Store) PutOver(ctx context.Context, from cases.History, c cases.Case, what string) error {
	return s.edit(ctx, "keeping the case", func(tx *sql.Tx) error {
		now, err := historyOf(ctx, tx, c.ID)
		if err == nil && (now.Revision != from.Revision || !now.Saved.Equal(from.Saved)) {
			return cases.ErrChanged
		}
		if err != nil && !errors.Is(err, cases.ErrNotFound) { // one that was deleted comes back
			return err
		}
		_, err = s.put(ctx, tx, c, what)
		return err
	})
}

// PutAll keeps the cases with their files: all of them, or on an error none.
// It answers their IDs in the same order.
func (s *Store) PutAll(ctx context.Context, bundles []cases.Bundle, what string) (ids []string, err error) {
	err = s.tx(ctx, func(tx *sql.Tx) error {
		for i, b := range bundles {
			id, err := s.putBundle(ctx, tx, b, what)
			if err != nil {
				return fmt.Errorf("keeping case %d of %d (%q): %w", i+1, len(bundles), b.Case.Title, err)
			}
			ids = append(ids, id)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return ids, nil
}

// PutGuessed is PutAll for closed cases whose ranking is known: what was held
// likeliest is kept with each. An empty guess is none.
func (s *Store) PutGuessed(ctx context.Context, bundles []cases.Bundle, guesses []cases.Guess, what string) error {
	return s.tx(ctx, func(tx *sql.Tx) error {
		for i, b := range bundles {
			id, err := s.putBundle(ctx, tx, b, what)
			if err == nil && guesses[i].First != "" {
				err = s.setGuess(ctx, tx, id, b.Case.Verdict.Cause, guesses[i])
			}
			if err != nil {
				return fmt.Errorf("keeping case %d of %d (%q): %w", i+1, len(bundles), b.Case.Title, err)
			}
		}
		return nil
	})
}

func (s *Store) putBundle(ctx context.Context, tx *sql.Tx, b cases.Bundle, what string) (string, error) {
	b, err := beside(ctx, tx, b)
	if err != nil {
		return "", err
	}
	id, err := s.put(ctx, tx, b.Case, what)
	if err != nil {
		return "", err
	}
	for name, data := range b.Files {
		if err := attach(ctx, tx, id, name, data); err != nil {
			return "", err
		}
	}
	return id, nil
}

// beside gives the files of a bundle other names where the case has others under theirs: a step back leads to those.
func beside(ctx context.Context, tx *sql.Tx, b cases.Bundle) (cases.Bundle, error) {
	at, err := find(ctx, tx, b.Case.ID)
	if errors.Is(err, cases.ErrNotFound) {
		return b, nil
	}
	if err != nil {
		return b, err
	}
	list, err := attachmentsOf(ctx, tx, at.key)
	if err != nil || len(list) == 0 {
		return b, err
	}
	had := map[string]string{}
	for _, a := range list {
		had[a.Name] = a.Hash
	}
	out, renamed := cases.Bundle{Case: b.Case, Files: map[string][]byte{}}, map[string]string{}
	for name, data := range b.Files {
		hash := hashOf(data)
		renamed[name] = cases.FreeFileName(name, func(free string) bool {
			_, theirs := b.Files[free]
			return had[free] != "" && had[free] != hash || theirs && free != name
		})
		out.Files[renamed[name]] = data
	}
	out.Case.Photos = slices.Clone(b.Case.Photos)
	for i, p := range out.Case.Photos {
		if now, is := renamed[p.File]; is {
			out.Case.Photos[i].File = now
		}
	}
	return out, nil
}

func (s *Store) put(ctx context.Context, tx *sql.Tx, c cases.Case, what string) (string, error) {
	if c.ID == "" {
		id, err := s.newID()
		if err != nil {
			return "", err
		}
		c.ID = id
	}
	doc, err := split(ctx, tx, c)
	if err != nil {
		return "", err
	}
	at, err := find(ctx, tx, c.ID)
	switch {
	case errors.Is(err, cases.ErrNotFound):
		at, err = add(ctx, tx, c.ID)
	case err != nil:
	case at.doc == doc && at.alive:
		return c.ID, nil
	case at.doc == doc:
		return c.ID, s.show(ctx, tx, at.key, at.revision, c)
	}
	if err != nil {
		return "", err
	}
	at.revision++
	if err := s.revise(ctx, tx, at, doc, what); err != nil {
		return "", err
	}
	return c.ID, s.show(ctx, tx, at.key, at.revision, c)
}

func (s *Store) newID() (string, error) {
	id, err := ulid.New(ulid.Timestamp(s.now()), rand.Reader)
	return id.String(), err
}

// add makes the row of a case that has no revision yet. (RETURNING would open
// a savepoint, at which FTS5 writes its pending words: an import takes twice
// as long.)
func add(ctx context.Context, tx *sql.Tx, id string) (place, error) {
	done, err := tx.ExecContext(ctx, `INSERT INTO cases
		(id, revision, title, vehicle, layout, cause, before_repair, after_repair, changed)
		VALUES (?, 1, '', '', '', '', 0, 0, 0)`, id)
	if err != nil {
		return place{}, err
	}
	key, err := done.LastInsertId()
	return place{key: key}, err
}

// revise writes the revision at its place and drops those after it.
func (s *Store) revise(ctx context.Context, tx *sql.Tx, at place, doc document, what string) error {
	if _, err := tx.ExecContext(ctx, `DELETE FROM revisions WHERE case_key = ? AND number >= ?`, at.key, at.revision); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO revisions (case_key, number, what, saved, document, logs)
		VALUES (?, ?, ?, ?, ?, nullif(?, ''))`, at.key, at.revision, what, micro(s.now()), doc.text, doc.logs)
	return err
}
