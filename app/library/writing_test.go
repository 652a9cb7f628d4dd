package library

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"loopbook/cases"
)

// What keeps a file from being written is told by the name that a person chose, with what to do; it was a temporary
// file's, which isn't there any more. Nothing is left behind.
func TestAFileThatCantBeWritten(t *testing.T) {
	dir := t.TempDir()
	fails := func(err error) func(*os.File) error {
		return func(f *os.File) error {
			return fmt.Errorf("page 1: %w", &fs.PathError{Op: "write", Path: f.Name(), Err: err})
		}
	}
	if err := os.Mkdir(filepath.Join(dir, "folder.pdf"), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name  string
		write func(*os.File) error
		want  string
	}{
		{"full.pdf", fails(syscall.ENOSPC), "full.pdf can't be written: " + cases.ErrFull.Error()},
		{"broken.pdf", fails(syscall.EIO), "broken.pdf can't be written: "},
		{"folder.pdf", func(*os.File) error { return nil }, "folder.pdf can't be written: " + errFolder.Error()},
		{"none/there.pdf", func(*os.File) error { return nil }, "none/there.pdf can't be written: "},
		{"ours.pdf", func(*os.File) error { return cases.ErrNotFound }, cases.ErrNotFound.Error()},
	} {
		err := WriteFile(filepath.Join(dir, tt.name), tt.write)
		if err == nil || !strings.Contains(err.Error(), tt.want) || strings.Contains(err.Error(), ".loopbook-") {
			t.Errorf("%s: %v, want %q", tt.name, err, tt.want)
		}
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) != 1 {
		t.Errorf("%v is left (%v)", left, err)
	}
}

// A link stays one, and what it leads to is written: it went.
func TestWritingThroughALink(t *testing.T) {
	dir := t.TempDir()
	at, link := filepath.Join(dir, "at.pdf"), filepath.Join(dir, "link.pdf")
	if err := errors.Join(os.WriteFile(at, []byte("old"), 0o600), os.Symlink(at, link)); err != nil {
		t.Skip(err) // a system without links
	}
	write := func(f *os.File) error { _, err := f.WriteString("new"); return err }
	if err := WriteFile(link, write); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(link)
	text, err2 := os.ReadFile(at)
	if err != nil || err2 != nil || info.Mode()&fs.ModeSymlink == 0 || string(text) != "new" {
		t.Errorf("the link is %v (%v), and leads to %q (%v)", info.Mode(), err, text, err2)
	}
}

// What is kept from others stays so: a customer's case that lay there for its owner alone could be read by everybody once it
// was written again.
func TestWhoMayReadAFile(t *testing.T) {
	dir := t.TempDir()
	own, usual, new := filepath.Join(dir, "own.zip"), filepath.Join(dir, "usual"), filepath.Join(dir, "new.zip")
	if err := errors.Join(os.WriteFile(own, nil, 0o600), os.WriteFile(usual, nil, 0o666)); err != nil {
		t.Fatal(err)
	}
	modeOf := func(path string) fs.FileMode {
		info, err := os.Stat(path)
		if err != nil {
			t.Fatal(err)
		}
		return info.Mode()
	}
	for path, want := range map[string]fs.FileMode{own: modeOf(own), new: modeOf(usual)} {
		if err := WriteFile(path, func(f *os.File) error { _, err := f.WriteString("new"); return err }); err != nil || modeOf(path) != want {
			t.Errorf("%s is written as %v, %v; want %v", filepath.Base(path), modeOf(path), err, want)
		}
	}
}
