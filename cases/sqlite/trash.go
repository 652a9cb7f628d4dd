package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"loopbook/cases"
)

// Delete takes the case out of lists and searches, or answers
// cases.ErrNotFound. Nothing is lost: Restore brings it back.
func (s *Store) Delete(ctx context.Context, id string) error {
	err := s.tx(ctx, func(tx *sql.Tx) error {
		at, err := findAlive(ctx, tx, id)
		if err != nil {
			return err
		}
		if _, err := tx.ExecContext(ctx, `DELETE FROM search WHERE rowid = ?`, at.key); err != nil {
			return err
		}
		if err := s.putDigest(ctx, tx, at.key, nil); err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, `UPDATE cases SET deleted = ? WHERE key = ?`, micro(s.now()), at.key)
		return err
	})
	if err != nil {
		return fmt.Errorf("deleting case %q: %w", id, err)
	}
	return nil
}

// LastDeleted is the case that was deleted last and not brought back since, or
// cases.ErrNotFound.
func (s *Store) LastDeleted(ctx context.Context) (id string, err error) {
	err = s.view(ctx, func(tx *sql.Tx) error {
		return tx.QueryRowContext(ctx, `SELECT id FROM cases WHERE deleted IS NOT NULL ORDER BY deleted DESC LIMIT 1`).Scan(&id)
	})
	if errors.Is(err, sql.ErrNoRows) {
		return "", cases.ErrNotFound
	}
	return id, err
}

// Restore brings a deleted case back with its whole history and answers it;
// a case that wasn't deleted stays as it is.
func (s *Store) Restore(ctx context.Context, id string) (c cases.Case, err error) {
	err = s.tx(ctx, func(tx *sql.Tx) error {
		at, err := find(ctx, tx, id)
		if err != nil {
			return err
		}
		if c, err = load(ctx, tx, at.key, at.revision); err != nil || at.alive {
			return err
		}
		return s.show(ctx, tx, at.key, at.revision, c)
	})
	if err != nil {
		return cases.Case{}, fmt.Errorf("restoring case %q: %w", id, err)
	}
	return c, nil
}
