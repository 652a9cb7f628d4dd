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
	return s.edit(ctx, fmt.Sprintf("deleting case %q", id), func(tx *sql.Tx) error {
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
func (s *Store) Restore(ctx context.Context, id string) (cases.Case, error) {
	return answer(ctx, s.tx, fmt.Sprintf("restoring case %q", id), func(tx *sql.Tx) (c cases.Case, err error) {
		at, err := find(ctx, tx, id)
		if err != nil {
			return c, err
		}
		if c, err = load(ctx, tx, at.key, at.revision); err != nil || at.alive {
			return c, err
		}
		return c, s.show(ctx, tx, at.key, at.revision, c)
	})
}
