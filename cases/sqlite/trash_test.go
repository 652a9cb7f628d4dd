//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestDeleteAndRestore(t *testing.T) {
	ctx, s := context.Background(), open(t)
	id := put(t, s, casetest.Invented(1), "new")
	if err := s.Delete(ctx, id); err != nil {
		t.Fatal(err)
	}
	_, errGet := s.Get(ctx, id)
	_, errHistory := s.History(ctx, id)
	_, errUndo := s.Undo(ctx, id)
	for _, err := range []error{errGet, errHistory, errUndo, s.Delete(ctx, id), s.Attach(ctx, id, "photos/1.jpg", nil)} {
		if !errors.Is(err, cases.ErrNotFound) {
			t.Errorf("use of a deleted case: %v, want ErrNotFound", err)
		}
	}
	for _, q := range []cases.Query{{}, {Text: id}} {
		if page, err := s.Search(ctx, q); err != nil || page.Total != 0 {
			t.Errorf("Search(%+v) after Delete = %+v, %v; want nothing", q, page, err)
		}
	}
	if c, err := s.Restore(ctx, id); err != nil || c.ID != id {
		t.Fatalf("Restore = %v, %v", c.ID, err)
	}
	if page, err := s.Search(ctx, cases.Query{Text: id}); err != nil || page.Total != 1 {
		t.Errorf("Search after Restore = %+v, %v; want the case", page, err)
	}
	if _, err := s.Restore(ctx, "nobody"); !errors.Is(err, cases.ErrNotFound) {
		t.Errorf("Restore of an unknown case = %v, want ErrNotFound", err)
	}
}

func TestPutBringsADeletedCaseBack(t *testing.T) {
	ctx, s := context.Background(), open(t)
	id := put(t, s, casetest.Invented(1), "new")
	if err := s.Delete(ctx, id); err != nil {
		t.Fatal(err)
	}
	put(t, s, casetest.Invented(1), "import")
	if h, err := s.History(ctx, id); err != nil || h.Revision != 1 {
		t.Errorf("History = %+v, %v; want revision 1, since nothing changed", h, err)
	}
}
