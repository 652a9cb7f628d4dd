package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"loopbook/cases"
)

// place is where a case stands among its revisions.
type place struct {
	key      int64
	revision int
	alive    bool
	doc      document
}

// find is the place of a case, deleted or not, or cases.ErrNotFound.
func find(ctx context.Context, tx *sql.Tx, id string) (place, error) {
	var at place
	err := tx.QueryRowContext(ctx, `SELECT key, revision, deleted IS NULL, document, ifnull(logs, '')
		FROM cases JOIN revisions ON case_key = key AND number = revision
		WHERE id = ?`, id).Scan(&at.key, &at.revision, &at.alive, &at.doc.text, &at.doc.logs)
	if errors.Is(err, sql.ErrNoRows) {
		return place{}, cases.ErrNotFound
	}
	return at, err
}

// findAlive is find, for a case that isn't deleted.
func findAlive(ctx context.Context, tx *sql.Tx, id string) (place, error) {
	at, err := find(ctx, tx, id)
	if err == nil && !at.alive {
		return place{}, cases.ErrNotFound
	}
	return at, err
}

// Get reads a case as it stands, or cases.ErrNotFound.
func (s *Store) Get(ctx context.Context, id string) (cases.Case, error) {
	return answer(ctx, s.view, fmt.Sprintf("reading case %q", id), func(tx *sql.Tx) (cases.Case, error) {
		at, err := findAlive(ctx, tx, id)
		if err != nil {
			return cases.Case{}, err
		}
		return load(ctx, tx, at.key, at.revision)
	})
}

// Undo takes the last edit back and answers the case as it was before, or
// cases.ErrNothingToUndo. Files of the case stay.
func (s *Store) Undo(ctx context.Context, id string) (cases.Case, error) {
	return s.walk(ctx, fmt.Sprintf("undoing in case %q", id), id, -1, cases.ErrNothingToUndo)
}

// Redo makes the edit again that Undo took back, or answers
// cases.ErrNothingToRedo.
func (s *Store) Redo(ctx context.Context, id string) (cases.Case, error) {
	return s.walk(ctx, fmt.Sprintf("redoing in case %q", id), id, +1, cases.ErrNothingToRedo)
}

func (s *Store) walk(ctx context.Context, what, id string, by int, end error) (cases.Case, error) {
	return answer(ctx, s.tx, what, func(tx *sql.Tx) (c cases.Case, err error) {
		at, err := findAlive(ctx, tx, id)
		if err != nil {
			return c, err
		}
		c, err = load(ctx, tx, at.key, at.revision+by)
		if errors.Is(err, sql.ErrNoRows) {
			return c, end
		}
		if err != nil {
			return c, err
		}
		return c, s.show(ctx, tx, at.key, at.revision+by, c)
	})
}

// History says where a case stands among its revisions.
func (s *Store) History(ctx context.Context, id string) (cases.History, error) {
	return answer(ctx, s.view, fmt.Sprintf("history of case %q", id), func(tx *sql.Tx) (cases.History, error) { return historyOf(ctx, tx, id) })
}

func historyOf(ctx context.Context, tx *sql.Tx, id string) (cases.History, error) {
	var h cases.History
	var saved int64
	err := tx.QueryRowContext(ctx, `SELECT c.revision, now.saved, now.what, c.revision > 1, next.number IS NOT NULL, ifnull(next.what, '')
		FROM cases c
		JOIN revisions now ON now.case_key = c.key AND now.number = c.revision
		LEFT JOIN revisions next ON next.case_key = c.key AND next.number = c.revision + 1
		WHERE c.id = ? AND c.deleted IS NULL`, id).
		Scan(&h.Revision, &saved, &h.What, &h.CanUndo, &h.CanRedo, &h.RedoWhat)
	if errors.Is(err, sql.ErrNoRows) {
		err = cases.ErrNotFound
	}
	h.Saved = fromMicro(saved)
	return h, err
}
