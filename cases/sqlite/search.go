package sqlite

import (
	"context"
	"database/sql"
	"fmt"
	"strings"

	"loopbook/cases"
)

const defaultLimit = 50

// Search answers a page of the cases that q asks for, the best match first or,
// without a word in its text, the last opened first. Any text is a valid query.
// Times are UTC.
func (s *Store) Search(ctx context.Context, q cases.Query) (page cases.Page, err error) {
	a := askFor(q)
	err = s.view(ctx, func(tx *sql.Tx) error {
		if err := tx.QueryRowContext(ctx, a.count(), a.args...).Scan(&page.Total); err != nil {
			return err
		}
		page.Items, err = a.rows(ctx, tx, q)
		return err
	})
	if err != nil {
		return cases.Page{}, fmt.Errorf("searching: %w", err)
	}
	return page, nil
}

const matching = `search MATCH ?`

// ask is a query in SQL.
type ask struct {
	from, order string
	conditions  []string
	args        []any
}

func askFor(q cases.Query) ask {
	a := ask{from: `FROM cases`, order: `cases.opened DESC, cases.key DESC`}
	if match := matchOf(q.Text); match != "" { // the index holds living cases only
		a.from = `FROM search JOIN cases ON cases.key = search.rowid`
		a.order = `search.rank, ` + a.order
		a.and(matching, match)
	} else {
		a.and(`cases.deleted IS NULL`)
	}
	if q.Cause != "" {
		a.and(`cases.cause = ?`, string(q.Cause))
	}
	switch q.Stage {
	case "":
	case cases.BeforeRepair:
		a.and(`cases.before_repair = 1`)
	case cases.AfterRepair:
		a.and(`cases.after_repair = 1`)
	default:
		a.and(`FALSE`) // no case has such a stage
	}
	if q.Layout != "" {
		a.and(`cases.layout = ?`, q.Layout)
	}
	if q.Open != nil {
		a.and(`(cases.cause = '') = ?`, *q.Open)
	}
	if !q.From.IsZero() {
		a.and(`cases.opened >= ?`, micro(q.From))
	}
	if !q.To.IsZero() {
		a.and(`cases.opened < ?`, micro(q.To))
	}
	return a
}

func (a *ask) and(condition string, args ...any) {
	a.conditions = append(a.conditions, condition)
	a.args = append(a.args, args...)
}

func (a *ask) where() string { return ` WHERE ` + strings.Join(a.conditions, ` AND `) }

// count needs no row of cases where words alone are asked for.
func (a *ask) count() string {
	if len(a.conditions) == 1 && a.conditions[0] == matching {
		return `SELECT count(*) FROM search WHERE ` + matching
	}
	return `SELECT count(*) ` + a.from + a.where()
}

func (a *ask) rows(ctx context.Context, tx *sql.Tx, q cases.Query) ([]cases.Summary, error) {
	limit, offset := q.Limit, max(q.Offset, 0)
	if limit <= 0 {
		limit = defaultLimit
	}
	rows, err := tx.QueryContext(ctx, `SELECT id, cases.title, vehicle, layout, cause, opened, changed `+
		a.from+a.where()+` ORDER BY `+a.order+` LIMIT ? OFFSET ?`, append(a.args[:len(a.args):len(a.args)], limit, offset)...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var out []cases.Summary
	for rows.Next() {
		var s cases.Summary
		var opened sql.NullInt64
		var changed int64
		if err := rows.Scan(&s.ID, &s.Title, &s.Vehicle, &s.Layout, &s.Cause, &opened, &changed); err != nil {
			return nil, err
		}
		if opened.Valid {
			s.Opened = fromMicro(opened.Int64)
		}
		s.Changed = fromMicro(changed)
		out = append(out, s)
	}
	return out, rows.Err()
}
