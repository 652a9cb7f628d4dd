package sqlite

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"

	"loopbook/cases"
)

//go:embed migrations/*.sql
var migrations embed.FS

// script is one step of the schema; its place in the list is its version.
type script struct{ name, text string }

func scriptsOf(files fs.FS) ([]script, error) {
	names, err := fs.Glob(files, "migrations/*.sql") // sorted by name
	if err != nil {
		return nil, err
	}
	out := make([]script, len(names))
	for i, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		out[i] = script{name, string(text)}
	}
	return out, nil
}

// migrate runs the scripts that the file hasn't had yet, each in a transaction
// of its own with the version that it leads to.
func migrate(ctx context.Context, db *sql.DB, scripts []script) error {
	for done := false; !done; {
		err := within(ctx, db, func(tx *sql.Tx) (err error) {
			done, err = step(ctx, tx, scripts)
			return err
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// step runs the next script and tells whether none was left. It reads the
// version inside the transaction, since another window may be opening too.
func step(ctx context.Context, tx *sql.Tx, scripts []script) (done bool, err error) {
	var version int
	if err := tx.QueryRowContext(ctx, `PRAGMA user_version`).Scan(&version); err != nil {
		return false, err
	}
	switch {
	case version > len(scripts):
		return false, fmt.Errorf("%w (version %d; this one knows %d)", cases.ErrNewer, version, len(scripts))
	case version == len(scripts):
		return true, nil
	}
	next := scripts[version]
	if _, err := tx.ExecContext(ctx, next.text); err != nil {
		return false, fmt.Errorf("%s: %w", next.name, err)
	}
	_, err = tx.ExecContext(ctx, fmt.Sprintf(`PRAGMA user_version = %d`, version+1))
	return false, err
}
