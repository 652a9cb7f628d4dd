package library

import (
	"context"
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// sealedSet is a notebook that took in a sealed set of two cases, the first of which it has already.
func sealedSet(t *testing.T) (class cases.Class, file string, took Takings, theirs *sqlite.Store) {
	t.Helper()
	mine, ids := notebookOf(t, taught(1), taught(2), taught(4))
	ctx := context.Background()
	file = filepath.Join(t.TempDir(), "class.zip")
	class = cases.Class{Name: "Tuesday", Cases: []string{ids[1], ids[0], ids[2]}, Sealed: true}
	if err := WriteClass(ctx, mine, class, file); err != nil {
		t.Fatal(err)
	}
	theirs, _ = notebookOf(t, taught(1))
	took, err := Take(ctx, theirs, []string{file}, strings.NewReader(""), func(int, int) {})
	if err != nil || len(took.Refused) > 0 {
		t.Fatal(err, took.Refused)
	}
	return class, file, took, theirs
}

func taught(n int) cases.Bundle {
	c := casetest.Invented(n)
	c.Tags = []string{cases.TaughtTag}
	return cases.Bundle{Case: c}
}

// A sealed set's cases come in their order, and none that the notebook hasn't is told of before it was answered.
func TestASealedSetTellsNothing(t *testing.T) {
	class, file, took, theirs := sealedSet(t)
	ctx := context.Background()
	if took.Sealed != 2 || len(took.Met) != 1 || len(took.Classes) != 1 || !slices.Equal(took.Classes[0].Cases, class.Cases) {
		t.Errorf("taken in as %+v", took)
	}
	first := class.Cases[0]
	page, err := theirs.Search(ctx, cases.Query{})
	if err != nil || page.Total != 1 {
		t.Errorf("the list shows %d cases, %v", page.Total, err)
	}
	if _, err := theirs.Get(ctx, first); !errors.Is(err, cases.ErrNotFound) {
		t.Errorf("a sealed case is %v", err)
	}
	if b, err := SealedCase(ctx, theirs, first); err != nil || b.Case.ID != first || b.Case.Verdict.Cause == "" {
		t.Errorf("to practise on it is %q, %v", b.Case.ID, err)
	}
	if was, err := Unseal(ctx, theirs, first); err != nil || !was {
		t.Fatal(was, err)
	}
	if was, err := Unseal(ctx, theirs, first); err != nil || was {
		t.Errorf("once open it is opened again: %t, %v", was, err)
	}
	if c, err := theirs.Get(ctx, first); err != nil || c.ID != first {
		t.Errorf("open it is %q, %v", c.ID, err)
	}
	again, err := Take(ctx, theirs, []string{file}, strings.NewReader(""), func(int, int) {})
	if err != nil || again.Sealed != 1 || again.Known() != 2 {
		t.Errorf("taken in again: %d sealed, %d known, %v", again.Sealed, again.Known(), err)
	}
}

// A sealed set can be handed on, and what no set leads to any more is opened rather than lost.
func TestWhatNoSetLeadsToIsOpened(t *testing.T) {
	class, _, _, theirs := sealedSet(t)
	ctx, file := context.Background(), filepath.Join(t.TempDir(), "on.zip")
	if err := WriteClass(ctx, theirs, class, file); err != nil {
		t.Fatal(err)
	}
	third, _ := notebookOf(t)
	if took, err := Take(ctx, third, []string{file}, strings.NewReader(""), func(int, int) {}); err != nil || took.Sealed != 3 {
		t.Errorf("handed on: %+v, %v", took, err)
	}
	for _, tt := range []struct {
		cases []string
		want  int
	}{{class.Cases, 1}, {class.Cases[1:], 2}, {nil, 3}} {
		if err := theirs.SaveClass(ctx, cases.Class{Name: class.Name, Cases: tt.cases}); err != nil {
			t.Fatal(err)
		}
		if err := UnsealLoose(ctx, theirs); err != nil {
			t.Fatal(err)
		}
		if page, err := theirs.Search(ctx, cases.Query{}); err != nil || page.Total != tt.want {
			t.Errorf("of a set of %d the list shows %d cases, %v; want %d", len(tt.cases), page.Total, err, tt.want)
		}
	}
}

// A case that the notebook has under another id isn't shut: the set leads to that one. Opened by its answer it was gone from the
// set, which knew it by the id that it came with.
func TestACaseUnderAnotherIDIsNotShut(t *testing.T) {
	mine, ids := notebookOf(t, taught(1), taught(2))
	same := taught(1)
	same.Case.ID = "mine"
	theirs, _ := notebookOf(t, same)
	ctx, file := context.Background(), filepath.Join(t.TempDir(), "class.zip")
	if err := WriteClass(ctx, mine, cases.Class{Name: "Tuesday", Cases: ids, Sealed: true}, file); err != nil {
		t.Fatal(err)
	}
	took, err := Take(ctx, theirs, []string{file}, nil, func(int, int) {})
	if err != nil || took.Sealed != 1 || took.Known() != 1 || !slices.Equal(took.Classes[0].Cases, []string{"mine", ids[1]}) {
		t.Errorf("taken in as %+v, %v", took, err)
	}
}
