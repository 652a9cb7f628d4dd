//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestBackup(t *testing.T) {
	ctx, s := context.Background(), open(t)
	fill(t, s, 20)
	if err := s.Attach(ctx, casetest.Invented(3).ID, "photos/1.jpg", []byte("picture")); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "new folder", "copy.db")
	for range 2 { // the second replaces the first
		if err := s.Backup(ctx, path); err != nil {
			t.Fatal(err)
		}
	}
	left, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(left) != 1 {
		t.Errorf("the folder holds %v (%v), want the copy alone", left, err)
	}
	copied := openAt(t, path)
	page, err := copied.Search(ctx, cases.Query{Text: "case"})
	if err != nil || page.Total != 20 {
		t.Errorf("the copy finds %d (%v), want 20", page.Total, err)
	}
	if files, err := copied.Attachments(ctx, casetest.Invented(3).ID); err != nil || len(files) != 1 {
		t.Errorf("the copy's files: %v, %v", files, err)
	}
}

func TestBackupRefusesTheNotebookItself(t *testing.T) {
	ctx, s := context.Background(), open(t)
	fill(t, s, 3)
	link := filepath.Join(t.TempDir(), "link.db")
	if err := os.Symlink(s.Path(), link); err != nil {
		t.Skip("no links here:", err)
	}
	for _, path := range []string{s.Path(), s.Path() + "-wal", link} {
		if err := s.Backup(ctx, path); err == nil {
			t.Errorf("Backup to %s: no error", path)
		}
	}
	if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != 3 {
		t.Errorf("afterwards the notebook holds %d (%v), want 3", page.Total, err)
	}
}
