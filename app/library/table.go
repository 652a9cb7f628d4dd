package library

import (
	"context"
	"os"

	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/cases/sqlite"
)

// WriteTable writes the lines of a query as CSV.
func WriteTable(ctx context.Context, store *sqlite.Store, q cases.Query, path string) error {
	return writeTable(store, path, func(t *exchange.Table) error { return eachPage(ctx, store, q, t.Add) })
}

// WriteTableOf writes the lines of some cases as CSV.
func WriteTableOf(ctx context.Context, store *sqlite.Store, ids []string, path string) error {
	keys := make([]int64, len(ids))
	for i, id := range ids {
		d, err := store.Digest(ctx, id)
		if err != nil {
			return err
		}
		keys[i] = d.Key
	}
	lines, err := store.Summaries(ctx, keys)
	if err != nil {
		return err
	}
	return writeTable(store, path, func(t *exchange.Table) error { return t.Add(lines) })
}

func writeTable(store *sqlite.Store, path string, fill func(*exchange.Table) error) error {
	return writeApart(store, path, func(f *os.File) error {
		t, err := exchange.NewTable(f, [7]string{"id", "opened", "title", "vehicle", "layout", "cause", "changed"})
		if err != nil {
			return err
		}
		return fill(t)
	})
}

// IDsOf are all cases of a query.
func IDsOf(ctx context.Context, store *sqlite.Store, q cases.Query) (ids []string, err error) {
	err = eachPage(ctx, store, q, func(lines []cases.Summary) error {
		for _, s := range lines {
			ids = append(ids, s.ID)
		}
		return nil
	})
	return ids, err
}

// eachPage takes all lines of a query, page by page.
func eachPage(ctx context.Context, store *sqlite.Store, q cases.Query, take func([]cases.Summary) error) error {
	q.Limit = 1000
	for q.Offset = 0; ; q.Offset += q.Limit {
		page, err := store.Search(ctx, q)
		if err != nil {
			return err
		}
		if err := take(page.Items); err != nil || len(page.Items) < q.Limit {
			return err
		}
	}
}
