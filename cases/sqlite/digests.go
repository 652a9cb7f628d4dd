package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"sync"
	"time"

	"loopbook/cases"
)

// Enrich gives the store what its digests need besides the case itself: it sets
// deviations and minutes. Call it before the store is used.
func (s *Store) Enrich(more func(*cases.Case, *cases.Digest)) { s.more = more }

// writeDigest keeps what c, as it was changed last, comes to beside its row.
func (s *Store) writeDigest(ctx context.Context, tx *sql.Tx, key int64, c cases.Case, changed time.Time) error {
	d := cases.DigestOf(&c)
	d.Changed = changed
	if s.more != nil {
		s.more(&c, &d)
	}
	if d.Cause != "" {
		err := tx.QueryRowContext(ctx, `SELECT first, first_p, truth_p FROM guesses WHERE case_key = ? AND verdict = ?`, key, string(d.Cause)).
			Scan(&d.Guess.First, &d.Guess.FirstP, &d.Guess.TruthP)
		if err != nil && !errors.Is(err, sql.ErrNoRows) {
			return err
		}
	}
	return s.putDigest(ctx, tx, key, packed(d))
}

// putDigest writes a digest into its chunk; nil takes it out.
func (s *Store) putDigest(ctx context.Context, tx *sql.Tx, key int64, body []byte) error {
	chunk, err := chunkOf(ctx, tx, key)
	if err != nil {
		return err
	}
	if chunk, err = replaced(chunk, key, body); err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO digests (chunk, changed, data)
		VALUES (?, (SELECT ifnull(max(changed), 0) + 1 FROM digests), ?)
		ON CONFLICT DO UPDATE SET changed = excluded.changed, data = excluded.data`, key/chunkRows, chunk)
	return err
}

// shelf holds the digests as they were read last, chunk by chunk.
type shelf struct {
	sync.Mutex
	seen   int64 // the newest change that it holds
	chunks map[int64][]cases.Digest
	order  []int64
	known  map[string]string
}

// refresh reads the chunks that have changed since. A reading that is cut short, as by the next letter of a search, is
// gone on with by the next one.
func (h *shelf) refresh(ctx context.Context, tx *sql.Tx) error {
	if h.chunks == nil {
		h.chunks, h.known = map[int64][]cases.Digest{}, map[string]string{}
	}
	defer h.inOrder()
	return eachRow(ctx, tx, `SELECT chunk, changed, data FROM digests WHERE changed > ? ORDER BY changed`, func(scan func(...any) error) error {
		var chunk, changed int64
		var data sql.RawBytes
		if err := scan(&chunk, &changed, &data); err != nil {
			return err
		}
		list, err := unpack(data, h.known)
		if err == nil {
			h.chunks[chunk], h.seen = list, changed
		}
		return err
	}, h.seen)
}

// inOrder takes up the chunks that are new.
func (h *shelf) inOrder() {
	if len(h.order) == len(h.chunks) {
		return
	}
	h.order = h.order[:0]
	for chunk := range h.chunks {
		h.order = append(h.order, chunk)
	}
	slices.Sort(h.order)
}

func unpack(data []byte, known map[string]string) ([]cases.Digest, error) {
	list := make([]cases.Digest, 0, chunkRows)
	err := entries(data, func(e entry) error {
		u := unpacker{b: e.body, known: known}
		d := u.digest()
		d.Key = e.key
		list = append(list, d)
		if u.bad {
			return errDigest
		}
		return nil
	})
	return list, err
}

// each calls do with every digest in the order of the keys. They must not be
// changed or kept.
func (s *Store) each(ctx context.Context, tx *sql.Tx, do func(*cases.Digest)) error {
	s.shelf.Lock()
	defer s.shelf.Unlock()
	if err := s.shelf.refresh(ctx, tx); err != nil {
		return err
	}
	for _, chunk := range s.shelf.order {
		list := s.shelf.chunks[chunk]
		for i := range list {
			do(&list[i])
		}
	}
	return nil
}

// EachDigest calls do with the digest of every living case. They must not be
// changed, nor kept after it returns.
func (s *Store) EachDigest(ctx context.Context, do func(*cases.Digest)) error {
	err := s.view(ctx, func(tx *sql.Tx) error { return s.each(ctx, tx, do) })
	if err != nil {
		return fmt.Errorf("reading the digests: %w", err)
	}
	return nil
}

// Digest is that of one case, or cases.ErrNotFound.
func (s *Store) Digest(ctx context.Context, id string) (cases.Digest, error) {
	return answer(ctx, s.view, fmt.Sprintf("reading case %q", id), func(tx *sql.Tx) (cases.Digest, error) {
		at, err := findAlive(ctx, tx, id)
		if err != nil {
			return cases.Digest{}, err
		}
		return digestOf(ctx, tx, at.key)
	})
}

// Summaries are the lines of rows, in the order of the keys given; of a case that was deleted meanwhile there is none.
func (s *Store) Summaries(ctx context.Context, keys []int64) ([]cases.Summary, error) {
	return answer(ctx, s.view, "reading lines", func(tx *sql.Tx) ([]cases.Summary, error) { return summaries(ctx, tx, keys) })
}

// SetGuess keeps what was held likeliest when the case's verdict was given. It
// counts as long as that is the verdict.
func (s *Store) SetGuess(ctx context.Context, id string, verdict cases.Cause, g cases.Guess) error {
	return s.edit(ctx, fmt.Sprintf("keeping the guess of case %q", id), func(tx *sql.Tx) error {
		return s.setGuess(ctx, tx, id, verdict, g)
	})
}

func (s *Store) setGuess(ctx context.Context, tx *sql.Tx, id string, verdict cases.Cause, g cases.Guess) error {
	at, err := findAlive(ctx, tx, id)
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO guesses (case_key, verdict, first, first_p, truth_p) VALUES (?, ?, ?, ?, ?)
		ON CONFLICT DO UPDATE SET verdict = excluded.verdict, first = excluded.first, first_p = excluded.first_p, truth_p = excluded.truth_p`,
		at.key, string(verdict), string(g.First), g.FirstP, g.TruthP)
	if err != nil {
		return err
	}
	d, err := digestOf(ctx, tx, at.key)
	if errors.Is(err, cases.ErrNotFound) {
		return nil
	}
	if err != nil {
		return err
	}
	if d.Cause == verdict {
		d.Guess = g
	}
	return s.putDigest(ctx, tx, at.key, packed(d))
}

// digestOf is the digest of one row, or cases.ErrNotFound.
func digestOf(ctx context.Context, tx *sql.Tx, key int64) (d cases.Digest, err error) {
	chunk, err := chunkOf(ctx, tx, key)
	if err != nil {
		return d, err
	}
	err = entries(chunk, func(e entry) error {
		if e.key == key {
			u := unpacker{b: e.body, known: map[string]string{}}
			d = u.digest()
			d.Key = key
		}
		return nil
	})
	if err == nil && d.Key == 0 {
		err = cases.ErrNotFound
	}
	return d, err
}

// chunkOf is the chunk in which a row's digest lies or will, empty where there is none yet.
func chunkOf(ctx context.Context, tx *sql.Tx, key int64) (chunk []byte, err error) {
	err = tx.QueryRowContext(ctx, `SELECT data FROM digests WHERE chunk = ?`, key/chunkRows).Scan(&chunk)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	return chunk, err
}
