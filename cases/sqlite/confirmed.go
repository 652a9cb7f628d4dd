package sqlite

import (
	"context"
	"database/sql"
	"fmt"

	"loopbook/cases"
)

// Confirmed counts the cases by the cause that was found and confirmed, without
// the case of that ID: whoever judges a case mustn't learn from its own answer, nor from that of a copy which is
// taught from.
func (s *Store) Confirmed(ctx context.Context, without string) (map[cases.Cause]int, error) {
	counts := map[cases.Cause]int{}
	err := s.view(ctx, func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, `SELECT cause, count(*) FROM cases
			JOIN revisions ON case_key = key AND number = revision
			WHERE deleted IS NULL AND cause <> '' AND id <> ? AND trim(document ->> '$.verdict.confirmed_by') <> ''
			AND NOT EXISTS (SELECT 1 FROM json_each(document, '$.tags') WHERE value = ?)
			GROUP BY cause`, without, cases.TaughtTag)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var cause cases.Cause
			var n int
			if err := rows.Scan(&cause, &n); err != nil {
				return err
			}
			counts[cause] = n
		}
		return rows.Err()
	})
	if err != nil {
		return nil, fmt.Errorf("counting confirmed cases: %w", err)
	}
	return counts, nil
}
