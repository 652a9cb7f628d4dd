package sqlite

import (
	"context"
	"database/sql"
	"fmt"
)

// tx runs do as one edit of the file: all of it or nothing.
func (s *Store) tx(ctx context.Context, do func(*sql.Tx) error) error {
	err := s.Here()
	if err == nil {
		err = within(ctx, s.write, do)
	}
	if err != nil {
		s.words.Range(func(word, _ any) bool {
			s.words.Delete(word)
			return true
		})
	}
	return err
}

// view runs do on one state of the file, whatever is written meanwhile.
func (s *Store) view(ctx context.Context, do func(*sql.Tx) error) error {
	return within(ctx, s.read, do)
}

func within(ctx context.Context, db *sql.DB, do func(*sql.Tx) error) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return explain(err)
	}
	defer tx.Rollback() // no effect after Commit
	if err := do(tx); err != nil {
		return explain(err)
	}
	return explain(tx.Commit())
}

// edit is tx with an error that begins with what was being done.
func (s *Store) edit(ctx context.Context, what string, do func(*sql.Tx) error) error {
	if err := s.tx(ctx, do); err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	return nil
}

// answer is what do answers in a transaction by run, which is tx or view. An error begins with what was being done, and
// comes with no answer.
func answer[T any](ctx context.Context, run func(context.Context, func(*sql.Tx) error) error, what string, do func(*sql.Tx) (T, error)) (T, error) {
	var out, none T
	err := run(ctx, func(tx *sql.Tx) (err error) {
		out, err = do(tx)
		return err
	})
	if err != nil {
		return none, fmt.Errorf("%s: %w", what, err)
	}
	return out, nil
}

// eachRow calls take with the way to read each row that a query answers.
func eachRow(ctx context.Context, tx *sql.Tx, query string, take func(scan func(...any) error) error, args ...any) error {
	rows, err := tx.QueryContext(ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := take(rows.Scan); err != nil {
			return err
		}
	}
	return rows.Err()
}
