package sqlite

import (
	"errors"

	"github.com/mattn/go-sqlite3"

	"loopbook/cases"
)

// fault is the domain's word for what the driver tells; the driver's own words are kept for whoever asks, since
// they tell a person nothing ("unable to open database file: no such file or directory" of one that lies there).
type fault struct{ word, driver error }

func (f fault) Error() string { return f.word.Error() }

func (f fault) Unwrap() []error { return []error{f.word, f.driver} }

// explain gives the driver's faults the domain's words, by code.
func explain(err error) error {
	var told fault
	var driver sqlite3.Error
	if errors.As(err, &told) || !errors.As(err, &driver) {
		return err
	}
	if word := wordFor(driver.Code); word != nil {
		return fault{word, err}
	}
	return err
}

// wordFor is the domain's word for a code of SQLite, or nil where the driver's own words must do.
func wordFor(code sqlite3.ErrNo) error {
	switch code {
	case sqlite3.ErrNotADB:
		return cases.ErrForeign
	case sqlite3.ErrCorrupt:
		return cases.ErrDamaged
	case sqlite3.ErrFull:
		return cases.ErrFull
	case sqlite3.ErrReadonly, sqlite3.ErrPerm, sqlite3.ErrCantOpen:
		return cases.ErrReadOnly
	case sqlite3.ErrBusy, sqlite3.ErrLocked:
		return cases.ErrBusy
	case sqlite3.ErrIoErr:
		return cases.ErrDisk
	}
	return nil
}
