package sqlite

import (
	"context"
	"database/sql"
	"strconv"
	"strings"

	"loopbook/cases"
)

// meeting calls do with every case that has the words and meets the conditions, and
// with its place among the best matches.
func (s *Store) meeting(ctx context.Context, tx *sql.Tx, q cases.Query, match string, do func(d *cases.Digest, rank int)) error {
	var places map[int64]int
	if match != "" {
		var err error
		if places, err = rowsWith(ctx, tx, match); err != nil {
			return err
		}
	}
	return s.each(ctx, tx, func(d *cases.Digest) {
		rank, found := places[d.Key]
		if match != "" && !found {
			return
		}
		for _, c := range q.Where {
			if !c.Meets(d) {
				return
			}
		}
		do(d, rank)
	})
}

// rowsWith are the rows with the words, by how well they match where they aren't
// too many. One long text crosses from SQLite quicker than as many rows.
func rowsWith(ctx context.Context, tx *sql.Tx, match string) (map[int64]int, error) {
	var total int
	if err := tx.QueryRowContext(ctx, countMatches, match).Scan(&total); err != nil {
		return nil, err
	}
	query := `SELECT ifnull(group_concat(rowid), '') FROM search WHERE search MATCH ?`
	if total <= mostRanked {
		query = `SELECT ifnull(group_concat(found), '') FROM (SELECT rowid AS found FROM search WHERE search MATCH ? ORDER BY rank)`
	}
	var list string
	if err := tx.QueryRowContext(ctx, query, match).Scan(&list); err != nil {
		return nil, err
	}
	places := make(map[int64]int, total)
	for list != "" {
		var one string
		one, list, _ = strings.Cut(list, ",")
		key, err := strconv.ParseInt(one, 10, 64)
		if err != nil {
			return nil, err
		}
		places[key] = len(places)
	}
	return places, nil
}

// secondChance is the text with each word that no case has replaced by the nearest
// that one has; "" where there is none.
func secondChance(ctx context.Context, tx *sql.Tx, text string) (string, error) {
	words, changed := strings.FieldsFunc(text, apart), false
	words = words[:min(len(words), mostWords)]
	for i, word := range words {
		held, err := isHeld(ctx, tx, word)
		if err != nil {
			return "", err
		}
		if held {
			continue
		}
		near, err := nearest(ctx, tx, word)
		if err != nil || near == "" {
			return "", err
		}
		words[i], changed = near, true
	}
	if !changed {
		return "", nil
	}
	return strings.Join(words, " "), nil
}

// isHeld tells whether a living case has the word.
func isHeld(ctx context.Context, tx *sql.Tx, word string) (held bool, err error) {
	err = tx.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM search WHERE search MATCH ?)`, matchOf(word)).Scan(&held)
	return held, err
}
