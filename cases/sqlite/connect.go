package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"

	"loopbook/cases"
)

// applicationID marks a notebook's file: "LOOP". The first migration writes it.
const applicationID = 0x4C4F4F50

// smallestPage of an SQLite file, in bytes, by its file format.
const smallestPage = 512

var errNoFTS = errors.New("this program was built without full-text search: build it with the tag sqlite_fts5")

type role int

const (
	reader role = iota
	writer
)

// dsn holds every setting, so that each connection of the pool has them.
func dsn(path string, as role) string {
	set := url.Values{"_busy_timeout": {"5000"}}
	switch as {
	case reader:
		set.Set("mode", "ro")
	case writer:
		set.Set("_journal_mode", "WAL")
		set.Set("_synchronous", "FULL") // NORMAL may lose the last edits with the power
		set.Set("_foreign_keys", "on")
		set.Set("_txlock", "immediate")
	}
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path // a drive's letter
	}
	u := url.URL{Scheme: "file", OmitHost: true, Path: path, RawQuery: set.Encode()}
	return u.String()
}

func connect(ctx context.Context, path string, as role) (*sql.DB, error) {
	db, err := sql.Open("sqlite3", dsn(path, as))
	if err != nil {
		return nil, err
	}
	if err := db.PingContext(ctx); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

// inspect reads whose file lies at path before anything could change it.
func inspect(ctx context.Context, path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return fmt.Errorf("%w: it is no plain file", cases.ErrForeign)
	case info.Size() == 0:
		return nil
	case info.Size() < smallestPage: // SQLite would take the shortest for empty
		return fmt.Errorf("%w: it is too short", cases.ErrForeign)
	}
	db, err := connect(ctx, path, reader)
	if err != nil {
		return err
	}
	defer db.Close()
	var owner, version, objects int64
	const header = `SELECT application_id, user_version, (SELECT count(*) FROM sqlite_schema)
		FROM pragma_application_id, pragma_user_version`
	if err := db.QueryRowContext(ctx, header).Scan(&owner, &version, &objects); err != nil {
		return err
	}
	empty := owner == 0 && version == 0 && objects == 0
	if owner != applicationID && !empty {
		return fmt.Errorf("%w: another program's database", cases.ErrForeign)
	}
	return nil
}

func needFTS(ctx context.Context, db *sql.DB) error {
	var has bool
	if err := db.QueryRowContext(ctx, `SELECT sqlite_compileoption_used('ENABLE_FTS5')`).Scan(&has); err != nil {
		return err
	}
	if !has {
		return errNoFTS
	}
	return nil
}
