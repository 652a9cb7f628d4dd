//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

func open(t testing.TB) *sqlite.Store {
	t.Helper()
	return openAt(t, filepath.Join(t.TempDir(), "a folder", "loop #1 50%?.db"))
}

func openAt(t testing.TB, path string) *sqlite.Store {
	t.Helper()
	s, err := sqlite.Open(context.Background(), path, casetest.Clock())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// fill puts the first n invented cases.
func fill(t testing.TB, s *sqlite.Store, n int) {
	t.Helper()
	bundles := make([]cases.Bundle, n)
	for i, c := range casetest.Notebook(n) {
		bundles[i].Case = c
	}
	if _, err := s.PutAll(context.Background(), bundles, "import"); err != nil {
		t.Fatal(err)
	}
}

func put(t testing.TB, s *sqlite.Store, c cases.Case, what string) string {
	t.Helper()
	id, err := s.Put(context.Background(), c, what)
	if err != nil {
		t.Fatal(err)
	}
	return id
}
