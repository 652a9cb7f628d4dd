package sqlite

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"slices"

	"loopbook/cases"
)

const defaultLimit = 50

// mostRanked is how many matches are put in order by how well they match: of more
// than that nobody looks for the best, and to rank them all takes longer than a
// keystroke. They stand in the order in which the notebook took them, the last
// first.
const mostRanked = 2000

// Search answers a page of the cases that q asks for, the best match first or,
// without a word in its text, the last opened first. Any text is a valid query;
// where its words are found nowhere, those nearest to them are looked for. Times
// are UTC.
func (s *Store) Search(ctx context.Context, q cases.Query) (cases.Page, error) {
	return answer(ctx, s.view, "searching", func(tx *sql.Tx) (cases.Page, error) {
		page, err := s.page(ctx, tx, q)
		if err != nil || page.Total > 0 || matchOf(q.Text) == "" {
			return page, err
		}
		text, err := secondChance(ctx, tx, q.Text)
		if err != nil || text == "" {
			return page, err
		}
		q.Text = text
		if page, err = s.page(ctx, tx, q); page.Total > 0 {
			page.ReadAs = text
		}
		return page, err
	})
}

// page answers by SQL alone where it can, and else by the digests.
func (s *Store) page(ctx context.Context, tx *sql.Tx, q cases.Query) (cases.Page, error) {
	match := matchOf(q.Text)
	switch {
	case len(q.Where) > 0 || match != "" && q.Sort != cases.Best:
		return s.filtered(ctx, tx, q, match)
	case match != "":
		return matched(ctx, tx, q, match)
	}
	return listed(ctx, tx, q)
}

// listed is every case, in an order that an index has.
func listed(ctx context.Context, tx *sql.Tx, q cases.Query) (page cases.Page, err error) {
	if err := tx.QueryRowContext(ctx, `SELECT alive FROM totals`).Scan(&page.Total); err != nil {
		return page, err
	}
	order := map[cases.Sort]string{
		cases.Best: `opened DESC, key DESC`, cases.Newest: `opened DESC, key DESC`,
		cases.Oldest: `opened, key`, cases.Recently: `changed DESC, key DESC`,
	}[q.Sort]
	if order == "" {
		return page, fmt.Errorf("unknown order %q", q.Sort)
	}
	limit, offset := bounds(q)
	page.Items, err = lines(ctx, tx, ` FROM cases WHERE deleted IS NULL ORDER BY `+order+` LIMIT ? OFFSET ?`, limit, offset)
	return page, err
}

// matched is every case with the words.
func matched(ctx context.Context, tx *sql.Tx, q cases.Query, match string) (page cases.Page, err error) {
	if err := tx.QueryRowContext(ctx, countMatches, match).Scan(&page.Total); err != nil {
		return page, err
	}
	limit, offset := bounds(q)
	page.Items, err = lines(ctx, tx, ` FROM (`+matchesBy(page.Total)+`) JOIN cases ON key = found`, match, limit, offset)
	return page, err
}

// countMatches and matchesBy are the whole work that full-text search has to do for
// a page.
const countMatches = `SELECT count(*) FROM search WHERE search MATCH ?`

func matchesBy(total int) string {
	order := `rank, rowid DESC`
	if total > mostRanked {
		order = `rowid DESC`
	}
	return `SELECT rowid AS found FROM search WHERE search MATCH ? ORDER BY ` + order + ` LIMIT ? OFFSET ?`
}

func bounds(q cases.Query) (limit, offset int) {
	if q.Limit <= 0 {
		return defaultLimit, max(q.Offset, 0)
	}
	return q.Limit, max(q.Offset, 0)
}

// filtered sorts by the digests; the rows of the page alone are read from the file.
func (s *Store) filtered(ctx context.Context, tx *sql.Tx, q cases.Query, match string) (page cases.Page, err error) {
	var hits []hit
	err = s.meeting(ctx, tx, q, match, func(d *cases.Digest, rank int) {
		hits = append(hits, hit{d.Key, rank, d.Opened.UnixMicro(), d.Changed.UnixMicro()})
	})
	if err != nil {
		return page, err
	}
	order, err := orderOf(q.Sort, match != "" && len(hits) <= mostRanked)
	if err != nil {
		return page, err
	}
	slices.SortFunc(hits, order)
	page.Total = len(hits)
	limit, offset := bounds(q)
	hits = hits[min(offset, len(hits)):min(offset+limit, len(hits))]
	keys := make([]int64, len(hits))
	for i, h := range hits {
		keys[i] = h.key
	}
	page.Items, err = summaries(ctx, tx, keys)
	return page, err
}

// hit is a case of an answer with what it is sorted by.
type hit struct {
	key             int64
	rank            int
	opened, changed int64
}

func orderOf(by cases.Sort, ranked bool) (func(a, b hit) int, error) {
	newest := func(a, b hit) int { return cmp.Or(cmp.Compare(b.opened, a.opened), cmp.Compare(b.key, a.key)) }
	switch {
	case by == cases.Best && ranked:
		return func(a, b hit) int { return cmp.Or(a.rank-b.rank, newest(a, b)) }, nil
	case by == cases.Best || by == cases.Newest:
		return newest, nil
	case by == cases.Oldest:
		return func(a, b hit) int { return newest(b, a) }, nil
	case by == cases.Recently:
		return func(a, b hit) int { return cmp.Or(cmp.Compare(b.changed, a.changed), cmp.Compare(b.key, a.key)) }, nil
	}
	return nil, fmt.Errorf("unknown order %q", by)
}

// summaries are the lines of keys, in their order.
func summaries(ctx context.Context, tx *sql.Tx, keys []int64) ([]cases.Summary, error) {
	if len(keys) == 0 {
		return nil, nil
	}
	list, err := json.Marshal(keys)
	if err != nil {
		return nil, err
	}
	// json_each keeps the order in its own key.
	return lines(ctx, tx, ` FROM json_each(?) AS wanted JOIN cases ON cases.key = wanted.value WHERE deleted IS NULL ORDER BY wanted.key`, string(list))
}

func lines(ctx context.Context, tx *sql.Tx, from string, args ...any) (out []cases.Summary, err error) {
	const columns = `SELECT cases.key, cases.id, cases.title, vehicle, layout, cause, opened, changed`
	err = eachRow(ctx, tx, columns+from, func(scan func(...any) error) error {
		var s cases.Summary
		var opened sql.NullInt64
		var changed int64
		err := scan(&s.Key, &s.ID, &s.Title, &s.Vehicle, &s.Layout, &s.Cause, &opened, &changed)
		if opened.Valid {
			s.Opened = fromMicro(opened.Int64)
		}
		s.Changed = fromMicro(changed)
		out = append(out, s)
		return err
	}, args...)
	return out, err
}
