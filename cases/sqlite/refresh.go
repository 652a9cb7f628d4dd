package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"loopbook/cases"
)

// staleAtOnce is how many rows are brought up to date in one transaction: short
// enough that nobody waits for the file.
const staleAtOnce = 100

// Refresh makes what an older program's notebook lacks: digests, words, contents.
// It calls progress (which may be nil) with how many are left, and goes on where it
// was stopped. Everything else works meanwhile, and in a notebook that can't be written for good; of those cases,
// searches, filters and statistics know what the older program did.
func (s *Store) Refresh(ctx context.Context, progress func(left int)) error {
	for {
		done, err := s.refreshSome(ctx)
		if errors.Is(err, cases.ErrReadOnly) {
			return nil
		}
		if err != nil || done == 0 {
			return err
		}
		if progress != nil {
			var left int
			if err := s.read.QueryRowContext(ctx, `SELECT count(*) FROM cases WHERE stale = 1`).Scan(&left); err != nil {
				return explain(err)
			}
			progress(left)
		}
	}
}

func (s *Store) refreshSome(ctx context.Context) (done int, err error) {
	err = s.tx(ctx, func(tx *sql.Tx) error {
		list, err := staleOnes(ctx, tx)
		if err != nil {
			return err
		}
		done = len(list)
		for _, at := range list {
			if err := s.renew(ctx, tx, at); err != nil {
				return fmt.Errorf("bringing case %d up to date: %w", at.key, err)
			}
		}
		return nil
	})
	return done, err
}

// staleOne is a row to be brought up to date, which is no change of its case.
type staleOne struct {
	place
	changed time.Time
}

func staleOnes(ctx context.Context, tx *sql.Tx) (list []staleOne, err error) {
	err = eachRow(ctx, tx, `SELECT key, revision, deleted IS NULL, changed FROM cases WHERE stale = 1 LIMIT ?`, func(scan func(...any) error) error {
		var at staleOne
		var changed int64
		err := scan(&at.key, &at.revision, &at.alive, &changed)
		at.changed = fromMicro(changed)
		list = append(list, at)
		return err
	}, staleAtOnce)
	return list, err
}

// renew makes what stands beside the case's row. A deleted case has no digest and
// is in no search.
func (s *Store) renew(ctx context.Context, tx *sql.Tx, at staleOne) error {
	c, err := load(ctx, tx, at.key, at.revision)
	if err != nil {
		return err
	}
	content, err := contentOf(c)
	if err != nil {
		return err
	}
	if at.alive {
		if err := s.describe(ctx, tx, at.key, c, at.changed); err != nil {
			return err
		}
	}
	_, err = tx.ExecContext(ctx, `UPDATE cases SET content = ?, stale = 0 WHERE key = ?`, content, at.key)
	return err
}

// contentOf tells cases apart by all but their id.
func contentOf(c cases.Case) (string, error) {
	c.ID = ""
	text, err := cases.Encode(c)
	if err != nil {
		return "", err
	}
	return hashOf(text)[:32], nil
}
