package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"loopbook/cases"
)

// Smaller reads the smaller copy of the picture with a hash, or answers
// cases.ErrNoFile: then it is for the caller to make one and to KeepSmaller.
func (s *Store) Smaller(ctx context.Context, hash string) (data []byte, err error) {
	err = s.read.QueryRowContext(ctx, `SELECT data FROM smaller WHERE hash = ?`, hash).Scan(&data)
	if errors.Is(err, sql.ErrNoRows) {
		err = cases.ErrNoFile
	}
	if err != nil {
		return nil, fmt.Errorf("reading the smaller copy of file %.12s: %w", hash, explain(err))
	}
	return data, nil
}

// KeepSmaller keeps a smaller copy of the picture with a hash for as long as a case
// that isn't deleted has the picture; of one that none has, nothing is kept. A copy
// is no content of a case: it never leaves the notebook in a bundle.
func (s *Store) KeepSmaller(ctx context.Context, hash string, data []byte) error {
	return s.edit(ctx, fmt.Sprintf("keeping the smaller copy of file %.12s", hash), func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO smaller (hash, data) SELECT ?1, ?2
			WHERE EXISTS (SELECT 1 FROM attachments JOIN cases ON key = case_key WHERE hash = ?1 AND deleted IS NULL)
			ON CONFLICT DO NOTHING`, hash, data)
		return err
	})
}
