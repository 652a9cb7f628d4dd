package sqlite

import (
	"context"
	"database/sql"

	"loopbook/cases"
)

// Confirmed counts the cases by the cause that was found and confirmed, without
// the case of that ID: whoever judges a case mustn't learn from its own answer, nor from that of a copy which is
// taught from.
func (s *Store) Confirmed(ctx context.Context, without string) (map[cases.Cause]int, error) {
	return answer(ctx, s.view, "counting confirmed cases", func(tx *sql.Tx) (map[cases.Cause]int, error) {
		counts := map[cases.Cause]int{}
		err := eachRow(ctx, tx, `SELECT cause, count(*) FROM cases
			JOIN revisions ON case_key = key AND number = revision
			WHERE deleted IS NULL AND cause <> '' AND id <> ? AND trim(document ->> '$.verdict.confirmed_by') <> ''
			AND NOT EXISTS (SELECT 1 FROM json_each(document, '$.tags') WHERE value = ?)
			GROUP BY cause`, func(scan func(...any) error) error {
			var cause cases.Cause
			var n int
			err := scan(&cause, &n)
			counts[cause] = n
			return err
		}, without, cases.TaughtTag)
		return counts, err
	})
}
