//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"loopbook/cases"
)

// A sealed case is found by its id alone, also in a notebook of an earlier version.
func TestASealedCaseIsFoundByItsIdAlone(t *testing.T) {
	ctx, s := context.Background(), old(t, "version-3.db")
	before, err := s.Search(ctx, cases.Query{})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Seal(ctx, "shut", []byte("first")); err != nil {
		t.Fatal(err)
	}
	if err := s.Seal(ctx, "shut", []byte("again")); err != nil {
		t.Fatal(err)
	}
	if after, err := s.Search(ctx, cases.Query{}); err != nil || after.Total != before.Total {
		t.Errorf("the list shows %d cases, %v; before %d", after.Total, err, before.Total)
	}
	if _, err := s.Get(ctx, "shut"); !errors.Is(err, cases.ErrNotFound) {
		t.Errorf("as a case of the notebook it is %v", err)
	}
	if b, err := s.Sealed(ctx, "shut"); err != nil || string(b) != "again" {
		t.Errorf("it is %q, %v", b, err)
	}
	if ids, err := s.SealedIDs(ctx); err != nil || !slices.Equal(ids, []string{"shut"}) {
		t.Errorf("sealed are %v, %v", ids, err)
	}
	if err := s.DropSealed(ctx, "shut"); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Sealed(ctx, "shut"); !errors.Is(err, cases.ErrNotFound) {
		t.Errorf("once dropped it is %v", err)
	}
}
