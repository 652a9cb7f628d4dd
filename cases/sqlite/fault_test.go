//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// A notebook whose file was moved or deleted took every entry as kept, and all of them were gone with the program.
func TestNothingIsKeptInAFileThatIsGone(t *testing.T) {
	ctx := context.Background()
	for name, lose := range map[string]func(string) error{
		"deleted": os.Remove,
		"renamed": func(path string) error { return os.Rename(path, path+".old") },
		"another in its place": func(path string) error {
			return errors.Join(os.Rename(path, path+".old"), os.WriteFile(path, nil, 0o600))
		},
	} {
		s := open(t)
		id := put(t, s, casetest.Invented(1), "new")
		if err := lose(s.Path()); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Put(ctx, casetest.Invented(2), "new"); !errors.Is(err, cases.ErrGone) || !strings.Contains(err.Error(), s.Path()) {
			t.Errorf("%s: Put = %v, want ErrGone with the path", name, err)
		}
		if _, err := s.Get(ctx, id); err != nil {
			t.Errorf("%s: what was kept before can't be read: %v", name, err)
		}
		if name != "renamed" {
			continue
		}
		if err := os.Rename(s.Path()+".old", s.Path()); err != nil {
			t.Fatal(err)
		}
		put(t, s, casetest.Invented(2), "new") // it lies where it did
	}
}

// A notebook whose file is gone is written anew with all that was kept, and one that was renamed has all of it too:
// what SQLite held beside it would have been lost to it, and been read into whatever lay there next.
func TestANotebookThatIsGoneIsWrittenAnew(t *testing.T) {
	ctx := context.Background()
	for name, lose := range map[string]func(string) error{
		"deleted": os.Remove,
		"renamed": func(path string) error { return os.Rename(path, path+".old") },
	} {
		s := open(t)
		fill(t, s, 20)
		if err := lose(s.Path()); err != nil {
			t.Fatal(err)
		}
		if err := s.Anew(ctx); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		has := func(path string) {
			again := openAt(t, path)
			page, err := again.Search(ctx, cases.Query{})
			if err != nil || page.Total != 20 {
				t.Errorf("%s: %s has %d cases (%v), want 20", name, path, page.Total, err)
			}
			if err := again.Backup(ctx, path+".copy"); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
		has(s.Path())
		if name == "renamed" {
			has(s.Path() + ".old")
		}
		if err := openAt(t, s.Path()).Anew(ctx); err == nil {
			t.Errorf("%s: it was written over a file", name)
		}
	}
}

// A full disk is told in words that say what to do, and takes nothing half.
func TestAFullDiskIsToldInPlainWords(t *testing.T) {
	ctx := context.Background()
	s := open(t)
	put(t, s, casetest.Invented(1), "new")
	s.Full(t)
	_, err := s.Put(ctx, cases.Case{Title: strings.Repeat("long ", 100_000)}, "new")
	if !errors.Is(err, cases.ErrFull) || !strings.Contains(err.Error(), "make room") || strings.Contains(err.Error(), "database") {
		t.Errorf("Put = %v, want ErrFull in plain words", err)
	}
	if page, err := s.Search(ctx, cases.Query{}); err != nil || len(page.Items) != 1 {
		t.Errorf("%d cases, %v: want the one that was kept", len(page.Items), err)
	}
}

// Whoever writes for longer than one waits is told of.
func TestABusyNotebookIsToldInPlainWords(t *testing.T) {
	s := openAt(t, filepath.Join(t.TempDir(), "n.db"))
	other, err := sql.Open("sqlite3", "file:"+s.Path()+"?_txlock=immediate")
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	tx, err := other.Begin()
	if err != nil {
		t.Fatal(err)
	}
	defer tx.Rollback()
	s.Impatient(t)
	if _, err := s.Put(context.Background(), casetest.Invented(1), "new"); !errors.Is(err, cases.ErrBusy) {
		t.Errorf("Put = %v, want ErrBusy", err)
	}
}

// A notebook that can't be made leaves no empty file behind.
func TestNothingIsLeftOfANotebookThatCantBeMade(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.db")
	if err := os.Mkdir(path+"-wal", 0o700); err != nil { // so that nothing can be written
		t.Fatal(err)
	}
	s, err := sqlite.Open(context.Background(), path, casetest.Clock())
	if err == nil {
		s.Close()
		t.Fatal("a notebook was made")
	}
	if strings.Contains(err.Error(), "database") || !errors.Is(err, cases.ErrDisk) {
		t.Errorf("Open = %v, want ErrDisk in plain words", err)
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("an empty file lies there")
	}
}
