package sqlite

import (
	"context"
	"database/sql"
	"errors"

	"loopbook/cases"
)

// Seal keeps a case apart from all others, as the file it came in: it is found by its id alone until it is unsealed. One
// of that id takes the place of the last.
func (s *Store) Seal(ctx context.Context, caseID string, bundle []byte) error {
	return s.edit(ctx, "keeping the case shut", func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO sealed (case_id, bundle) VALUES (?, ?) ON CONFLICT DO UPDATE SET bundle = excluded.bundle`, caseID, bundle)
		return err
	})
}

// Sealed is the file of a sealed case, or an error that is cases.ErrNotFound.
func (s *Store) Sealed(ctx context.Context, caseID string) ([]byte, error) {
	return answer(ctx, s.view, "reading the sealed case "+caseID, func(tx *sql.Tx) (bundle []byte, err error) {
		err = tx.QueryRowContext(ctx, `SELECT bundle FROM sealed WHERE case_id = ?`, caseID).Scan(&bundle)
		if errors.Is(err, sql.ErrNoRows) {
			err = cases.ErrNotFound
		}
		return bundle, err
	})
}

// SealedIDs are the ids of all sealed cases.
func (s *Store) SealedIDs(ctx context.Context) (ids []string, err error) {
	err = s.rows(ctx, "reading what is sealed", `SELECT case_id FROM sealed ORDER BY case_id`, func(scan func(...any) error) error {
		var id string
		err := scan(&id)
		ids = append(ids, id)
		return err
	})
	return ids, err
}

// DropSealed drops a sealed case's file, once the case stands among the others.
func (s *Store) DropSealed(ctx context.Context, caseID string) error {
	return s.edit(ctx, "opening the sealed case", func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `DELETE FROM sealed WHERE case_id = ?`, caseID)
		return err
	})
}
