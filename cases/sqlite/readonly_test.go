package sqlite_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

// A notebook whose file may only be read tells so as it is opened, not with the first edit.
func TestANotebookTellsThatItIsReadOnly(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("whoever may do all may write a file that is for reading")
	}
	path := filepath.Join(t.TempDir(), "n.db")
	s := openAt(t, path)
	fill(t, s, 3)
	if s.ReadOnly() {
		t.Error("one that was just written is told to be read-only")
	}
	if err := errors.Join(s.Close(), os.Chmod(path, 0o444)); err != nil {
		t.Fatal(err)
	}
	s = openAt(t, path)
	if !s.ReadOnly() || totalOf(t, s, cases.Query{}) != 3 {
		t.Errorf("read-only: %t, with %d cases", s.ReadOnly(), totalOf(t, s, cases.Query{}))
	}
	if _, err := s.Put(context.Background(), casetest.Invented(21), "new"); !errors.Is(err, cases.ErrReadOnly) {
		t.Errorf("Put = %v, want ErrReadOnly", err)
	}
}
