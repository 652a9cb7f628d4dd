package sqlite

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"loopbook/cases"
)

// Backup writes a copy of the notebook to path while it stays in use, and
// checks the copy; Open reads it. A file that lies there is replaced, and only
// by a copy that was checked. The notebook's own path is refused.
func (s *Store) Backup(ctx context.Context, path string) error {
	if err := s.backup(ctx, path); err != nil {
		return fmt.Errorf("backup to %s: %w", path, explain(err))
	}
	return nil
}

func (s *Store) backup(ctx context.Context, path string) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	if err := s.Apart(path); err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	part, err := emptyFile(filepath.Dir(path), filepath.Base(path)+".*.part")
	if err != nil {
		return err
	}
	defer os.Remove(part) // no effect after the renaming
	if _, err := s.read.ExecContext(ctx, `VACUUM INTO ?`, part); err != nil {
		return err
	}
	if err := check(ctx, part); err != nil {
		return err
	}
	if err := onDisk(part); err != nil {
		return err
	}
	return os.Rename(part, path)
}

// Anew writes the notebook to where it lay, from what is still at hand of it, once its file is gone from there, and
// closes s: Open reads it. Nothing is written over.
func (s *Store) Anew(ctx context.Context) error {
	if _, err := os.Stat(s.path); err == nil {
		return fmt.Errorf("a file lies at %s by now: look again", s.path)
	}
	whole := s.path + ".anew"
	if err := s.Backup(ctx, whole); err != nil {
		return err
	}
	_ = s.Close() // the file that it closes isn't there
	for _, beside := range []string{"-wal", "-shm"} {
		os.Remove(s.path + beside) // of the file that was
	}
	return os.Rename(whole, s.path)
}

func emptyFile(folder, pattern string) (path string, err error) {
	f, err := os.CreateTemp(folder, pattern)
	if err != nil {
		return "", err
	}
	return f.Name(), f.Close()
}

// check reads the whole file at path: every page, index and constraint.
func check(ctx context.Context, path string) error {
	db, err := connect(ctx, path, reader)
	if err != nil {
		return err
	}
	defer db.Close()
	var found string
	if err := db.QueryRowContext(ctx, `PRAGMA integrity_check(1)`).Scan(&found); err != nil {
		return err
	}
	if found != "ok" {
		return fmt.Errorf("%w: %s", cases.ErrDamaged, found)
	}
	return nil
}

// errOwn refuses to write what is taken from the notebook over it.
var errOwn = errors.New("is the notebook itself: choose another name")

// Apart is an error where an absolute path is one of the notebook's own files.
func (s *Store) Apart(path string) error {
	if SameFile(path, s.path) || path == s.path+"-wal" || path == s.path+"-shm" {
		return errOwn
	}
	return nil
}

// SameFile reports whether both names lead to one file that is there.
func SameFile(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}

// onDisk waits until the file would survive a power cut.
func onDisk(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}
