package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"loopbook/cases"
)

// Import takes a case from outside without making it twice: a new one is kept, one
// that is there keeps what it has and gains files that it lacked, and a conflict
// changes nothing until Resolve. All of a bundle is taken or none.
func (s *Store) Import(ctx context.Context, b cases.Bundle, what string) (cases.Met, error) {
	return answer(ctx, s.tx, fmt.Sprintf("taking in case %q (%q)", b.Case.ID, b.Case.Title), func(tx *sql.Tx) (cases.Met, error) {
		return s.merge(ctx, tx, b, what)
	})
}

// ImportAll is Import of several at once, in a fraction of the time that the disk takes for
// each alone: all of them, or on an error none.
func (s *Store) ImportAll(ctx context.Context, bundles []cases.Bundle, what string) (all []cases.Met, err error) {
	err = s.tx(ctx, func(tx *sql.Tx) error {
		for _, b := range bundles {
			met, err := s.merge(ctx, tx, b, what)
			if err != nil {
				return fmt.Errorf("taking in case %q (%q): %w", b.Case.ID, b.Case.Title, err)
			}
			all = append(all, met)
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return all, nil
}

func (s *Store) merge(ctx context.Context, tx *sql.Tx, b cases.Bundle, what string) (cases.Met, error) {
	content, err := contentOf(b.Case)
	if err != nil {
		return cases.Met{}, err
	}
	id, meeting, err := meet(ctx, tx, b.Case, content)
	if err != nil {
		return cases.Met{}, err
	}
	met := cases.Met{Meeting: meeting, ID: id}
	switch meeting {
	case cases.MeetsNone:
		met.ID, err = s.putBundle(ctx, tx, b, what)
	case cases.MeetsSame, cases.MeetsOlder:
		err = addFiles(ctx, tx, id, b.Files)
	case cases.MeetsOther:
		at, errAt := findAlive(ctx, tx, id)
		if errAt != nil {
			return met, errAt
		}
		met.Theirs = b
		met.Mine, err = load(ctx, tx, at.key, at.revision)
	}
	return met, err
}

// byContent finds a case under whichever id. It says again what the index says, or
// SQLite would read all cases for each that comes in.
const byContent = `SELECT id FROM cases WHERE content = ? AND content <> '' AND deleted IS NULL LIMIT 1`

// Has tells whether the notebook has the case, under its id or the same one under another.
func (s *Store) Has(ctx context.Context, c cases.Case) (bool, error) {
	content, err := contentOf(c)
	if err != nil {
		return false, err
	}
	return answer(ctx, s.view, fmt.Sprintf("looking for case %q", c.ID), func(tx *sql.Tx) (bool, error) {
		_, err := findAlive(ctx, tx, c.ID)
		if !errors.Is(err, cases.ErrNotFound) {
			return err == nil, err
		}
		_, err = sameContent(ctx, tx, content)
		if errors.Is(err, sql.ErrNoRows) {
			return false, nil
		}
		return err == nil, err
	})
}

// sameContent is the id of a case that says the same, or else sql.ErrNoRows.
func sameContent(ctx context.Context, tx *sql.Tx, content string) (id string, err error) {
	err = tx.QueryRowContext(ctx, byContent, content).Scan(&id)
	return id, err
}

// meet tells what the notebook has of the case, and under which id.
func meet(ctx context.Context, tx *sql.Tx, c cases.Case, content string) (id string, meeting cases.Meeting, err error) {
	at, err := findAlive(ctx, tx, c.ID)
	switch {
	case errors.Is(err, cases.ErrNotFound):
		id, err := sameContent(ctx, tx, content)
		if errors.Is(err, sql.ErrNoRows) {
			return c.ID, cases.MeetsNone, nil
		}
		return id, cases.MeetsSame, err
	case err != nil:
		return "", "", err
	}
	doc, err := split(ctx, tx, c)
	if err != nil || doc == at.doc {
		return c.ID, cases.MeetsSame, err
	}
	var earlier bool
	err = tx.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM revisions
		WHERE case_key = ? AND number < ? AND document = ? AND ifnull(logs, '') = ?)`, at.key, at.revision, doc.text, doc.logs).Scan(&earlier)
	if err != nil || earlier {
		return c.ID, cases.MeetsOlder, err
	}
	return c.ID, cases.MeetsOther, nil
}

// addFiles attaches the files whose names are free; a case's own are never replaced
// by somebody else's.
func addFiles(ctx context.Context, tx *sql.Tx, id string, files map[string][]byte) error {
	at, err := findAlive(ctx, tx, id)
	if err != nil {
		return err
	}
	had, err := attachmentsOf(ctx, tx, at.key)
	if err != nil {
		return err
	}
	names := map[string]bool{}
	for _, a := range had {
		names[a.Name] = true
	}
	for name, data := range files {
		if names[name] {
			continue
		}
		if err := attach(ctx, tx, id, name, data); err != nil {
			return err
		}
	}
	return nil
}

// Resolve ends a conflict as a person chose, and answers the id of the case that
// was written: theirs become an edit of mine, or a case of its own.
func (s *Store) Resolve(ctx context.Context, theirs cases.Bundle, choice cases.Choice, what string) (id string, err error) {
	if choice == cases.KeepMine {
		return theirs.Case.ID, nil
	}
	if choice == cases.KeepBoth {
		if theirs.Case.ID, err = s.newID(); err != nil {
			return "", err
		}
	}
	return answer(ctx, s.tx, fmt.Sprintf("taking in case %q", theirs.Case.ID), func(tx *sql.Tx) (string, error) {
		return s.putBundle(ctx, tx, theirs, what)
	})
}
