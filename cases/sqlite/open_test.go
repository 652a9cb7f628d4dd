//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

func refused(t *testing.T, path string, want error) {
	t.Helper()
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s, err := sqlite.Open(context.Background(), path, casetest.Clock())
	if err == nil {
		s.Close()
	}
	if !errors.Is(err, want) {
		t.Errorf("Open = %v, want %v", err, want)
	}
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
		t.Errorf("the refused file was changed (%v)", err)
	}
}

// alter runs SQL on a file behind the notebook's back.
func alter(t *testing.T, path, script string) {
	t.Helper()
	db, err := sql.Open("sqlite3", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if _, err := db.Exec(script); err != nil {
		t.Fatal(err)
	}
}

// closed is a notebook with cases that nobody has open.
func closed(t *testing.T) (path string) {
	t.Helper()
	s := open(t)
	fill(t, s, 50)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "moved.db")
	if err := os.Rename(s.Path(), path); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestOpenRefusesForeignFiles(t *testing.T) {
	path := filepath.Join(t.TempDir(), "other.db")
	alter(t, path, `CREATE TABLE recipes (name TEXT); PRAGMA user_version = 1`)
	refused(t, path, cases.ErrForeign)

	text := filepath.Join(t.TempDir(), "letter.txt")
	if err := os.WriteFile(text, bytes.Repeat([]byte("dear all, "), 1000), 0o600); err != nil {
		t.Fatal(err)
	}
	refused(t, text, cases.ErrForeign)

	if _, err := sqlite.Open(context.Background(), t.TempDir(), casetest.Clock()); !errors.Is(err, cases.ErrForeign) {
		t.Errorf("Open of a folder = %v, want ErrForeign", err)
	}
}

func TestOpenRefusesNewerFile(t *testing.T) {
	path := closed(t)
	alter(t, path, `PRAGMA user_version = 1000`)
	refused(t, path, cases.ErrNewer)
}

// TestTruncatedFile cuts a notebook at many places: opening or reading all of
// it must tell, and must not panic.
func TestTruncatedFile(t *testing.T) {
	whole, err := os.ReadFile(closed(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range []int{1, 50, 100, 600, 4095, 4096, 5000, 8192, len(whole) / 2, len(whole) - 4096, len(whole) - 1} {
		path := filepath.Join(t.TempDir(), "cut.db")
		if err := os.WriteFile(path, whole[:size], 0o600); err != nil {
			t.Fatal(err)
		}
		s, err := sqlite.Open(context.Background(), path, casetest.Clock())
		if err == nil {
			err = s.Backup(context.Background(), path+".copy")
			s.Close()
		}
		if !errors.Is(err, cases.ErrDamaged) && !errors.Is(err, cases.ErrForeign) {
			t.Errorf("cut to %d of %d bytes: %v, want ErrDamaged or ErrForeign", size, len(whole), err)
		}
		if _, err := os.Stat(path + ".copy"); err == nil {
			t.Errorf("cut to %d bytes: a backup was left behind", size)
		}
	}
}

// TestOverwrittenPage damages the middle: the backup's check must tell.
func TestOverwrittenPage(t *testing.T) {
	path := closed(t)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	at := bytes.Index(whole, []byte(`{"format":"loopbook-case"`)) &^ 4095
	copy(whole[at:], bytes.Repeat([]byte{0xAA}, 4096))
	if err := os.WriteFile(path, whole, 0o600); err != nil {
		t.Fatal(err)
	}
	s := openAt(t, path)
	if err := s.Backup(context.Background(), path+".copy"); !errors.Is(err, cases.ErrDamaged) {
		t.Errorf("Backup = %v, want ErrDamaged", err)
	}
}

func TestOpenTwice(t *testing.T) {
	a := open(t)
	b := openAt(t, a.Path())
	id := put(t, a, casetest.Invented(1), "new")
	if _, err := b.Get(context.Background(), id); err != nil {
		t.Errorf("the other window: %v", err)
	}
}

func TestOpenEmptyFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "empty.db")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	put(t, openAt(t, path), casetest.Invented(1), "new")
}
