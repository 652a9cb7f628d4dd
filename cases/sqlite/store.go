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
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"loopbook/cases"
)

// Store is an open notebook.
type Store struct {
	path  string
	file  os.FileInfo // which file was opened
	write *sql.DB     // one connection, since SQLite takes one writer
	read  *sql.DB     // sees the last commit while a write is under way
	shut  bool        // see ReadOnly
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
	_, before := os.Stat(path)
	s := &Store{path: path, now: now}
	if err := s.join(ctx); err != nil {
		if errors.Is(before, fs.ErrNotExist) {
			os.Remove(path) // it would lie there empty
		}
		return nil, err
	}
	return s, nil
}

// join opens both ways to the file.
func (s *Store) join(ctx context.Context) (err error) {
	if s.write, err = connect(ctx, s.path, writer); err != nil {
		return err
	}
	s.write.SetMaxOpenConns(1)
	err = prepare(ctx, s.write)
	if err == nil {
		s.shut, err = refuses(ctx, s.write)
	}
	if err == nil {
		s.read, err = connect(ctx, s.path, reader)
	}
	if err == nil {
		s.file, err = os.Stat(s.path)
	}
	if err != nil {
		return errors.Join(err, s.write.Close())
	}
	return nil
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

// refuses reports whether nothing can be written by a connection: SQLite opens a file that may only be read, and tells so with
// the first edit. What is asked of it here changes nothing.
func refuses(ctx context.Context, db *sql.DB) (bool, error) {
	err := within(ctx, db, func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `DELETE FROM sealed WHERE 0`)
		return err
	})
	if errors.Is(err, cases.ErrReadOnly) {
		return true, nil
	}
	return false, err
}

// ReadOnly reports whether the notebook could only be read as it was opened: no edit will be kept.
func (s *Store) ReadOnly() bool { return s.shut }

// Close ends the use of the notebook. One whose file is gone is settled and left open: on closing, SQLite removes
// what lies beside the path by its name, and that may be of the file that lies there by now. (It looks, but only at the
// file's number, which is the same on a drive that was taken out and put back.)
func (s *Store) Close() error {
	if s.Here() != nil {
		s.settle()
		return nil
	}
	return errors.Join(s.read.Close(), s.write.Close())
}

// settle puts what SQLite holds beside the notebook's file into it, wherever that is: whatever lies at the path next
// would be opened with it. On a drive that was taken out it does nothing.
func (s *Store) settle() { _, _ = s.write.Exec(`PRAGMA wal_checkpoint(TRUNCATE)`) }

// Path is where the notebook lies.
func (s *Store) Path() string { return s.path }

// Here tells whether the file that was opened still lies where it did: SQLite would write on into one that was
// deleted, and it would be gone with the program; of one that was renamed, what isn't in the file proper yet.
func (s *Store) Here() error {
	if now, err := os.Stat(s.path); err != nil || !os.SameFile(now, s.file) {
		return fmt.Errorf("%w (%s)", cases.ErrGone, s.path)
	}
	return nil
}

// micro is t as the file keeps it.
func micro(t time.Time) int64 { return t.UnixMicro() }

func fromMicro(us int64) time.Time { return time.UnixMicro(us).UTC() }
