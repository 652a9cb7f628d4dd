// Package sqlite keeps the notebook in one SQLite file.
//
// A case is one JSON document with a revision for every edit: undo, history
// and safety against a crash are the same mechanism. Beside it stand a
// full-text index, the columns that lists ask for, and the case's files by
// their content. It needs SQLite with FTS5: build with the tag sqlite_fts5.
//
// A Store may be used from several goroutines at once.
package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"

	"github.com/mattn/go-sqlite3"

	"loopbook/cases"
)

// Store is an open notebook.
type Store struct {
	path  string
	write *sql.DB // one connection, since SQLite takes one writer
	read  *sql.DB // sees the last commit while a write is under way
	now   func() time.Time
	more  func(*cases.Case, *cases.Digest) // see Enrich; nil: nothing more
	shelf shelf
	words sync.Map // that the notebook is known to hold
}

// Open opens the notebook at path, makes it (and its folder) where there is
// none, and brings an older one up to date. The clock now dates revisions and
// new IDs. Errors are cases.ErrForeign, ErrNewer, ErrDamaged or of the system;
// a file that is refused stays as it was.
func Open(ctx context.Context, path string, now func() time.Time) (*Store, error) {
	s, err := open(ctx, path, now)
	if err != nil {
		return nil, fmt.Errorf("notebook %s: %w", path, explain(err))
	}
	return s, nil
}

func open(ctx context.Context, path string, now func() time.Time) (*Store, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, err
	}
	if err := inspect(ctx, path); err != nil {
		return nil, err
	}
	s := &Store{path: path, now: now}
	if s.write, err = connect(ctx, path, writer); err != nil {
		return nil, err
	}
	s.write.SetMaxOpenConns(1)
	if err := prepare(ctx, s.write); err != nil {
		return nil, errors.Join(err, s.write.Close())
	}
	if s.read, err = connect(ctx, path, reader); err != nil {
		return nil, errors.Join(err, s.write.Close())
	}
	return s, nil
}

// prepare makes sure of full-text search and of the newest schema.
func prepare(ctx context.Context, db *sql.DB) error {
	if err := needFTS(ctx, db); err != nil {
		return err
	}
	scripts, err := scriptsOf(migrations)
	if err != nil {
		return err
	}
	return migrate(ctx, db, scripts)
}

// Close ends the use of the notebook.
func (s *Store) Close() error { return errors.Join(s.read.Close(), s.write.Close()) }

// Path is where the notebook lies.
func (s *Store) Path() string { return s.path }

// tx runs do as one edit of the file: all of it or nothing.
func (s *Store) tx(ctx context.Context, do func(*sql.Tx) error) error {
	err := within(ctx, s.write, do)
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

// explain adds the domain's word to the driver's faults, by code.
func explain(err error) error {
	var fault sqlite3.Error
	if !errors.As(err, &fault) {
		return err
	}
	switch fault.Code {
	case sqlite3.ErrNotADB:
		return fmt.Errorf("%w: %w", cases.ErrForeign, err)
	case sqlite3.ErrCorrupt:
		return fmt.Errorf("%w: %w", cases.ErrDamaged, err)
	}
	return err
}

// micro is t as the file keeps it.
func micro(t time.Time) int64 { return t.UnixMicro() }

func fromMicro(us int64) time.Time { return time.UnixMicro(us).UTC() }
