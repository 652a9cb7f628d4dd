package library

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// filesOf writes n cases to as many files.
func filesOf(t *testing.T, n int) (files []string) {
	t.Helper()
	dir := t.TempDir()
	for i := range n {
		text, err := cases.Encode(casetest.Invented(i))
		files = append(files, filepath.Join(dir, fmt.Sprintf("%03d.json", i)))
		if err != nil || os.WriteFile(files[i], text, 0o600) != nil {
			t.Fatal(err)
		}
	}
	return files
}

// What is told when an import is stopped is what the notebook holds.
func TestImportStops(t *testing.T) {
	store, err := Open(context.Background(), filepath.Join(t.TempDir(), "n.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	files := filesOf(t, 3*MostAtOnce)
	ctx, cancel := context.WithCancel(context.Background())
	taken, err := Take(ctx, store, files, nil, func(int, int) { cancel() })
	page, errPage := store.Search(context.Background(), cases.Query{})
	if err == nil || errPage != nil || len(taken.Met) != MostAtOnce || page.Total != MostAtOnce || taken.Files != MostAtOnce || taken.Of != len(files) {
		t.Errorf("stopped after %d with %v; the notebook holds %d", len(taken.Met), err, page.Total)
	}
}

// picky refuses one case.
type picky struct {
	*sqlite.Store
	id string
}

var errPicky = errors.New("not this one")

func (p picky) Import(ctx context.Context, b cases.Bundle, what string) (cases.Met, error) {
	if b.Case.ID == p.id {
		return cases.Met{}, errPicky
	}
	return p.Store.Import(ctx, b, what)
}

func (p picky) ImportAll(ctx context.Context, all []cases.Bundle, what string) ([]cases.Met, error) {
	if slices.ContainsFunc(all, func(b cases.Bundle) bool { return b.Case.ID == p.id }) {
		return nil, errPicky
	}
	return p.Store.ImportAll(ctx, all, what)
}

// One that can't be kept doesn't keep out those that are kept in one go with it.
func TestOneAtFaultKeepsNoOtherOut(t *testing.T) {
	store, err := Open(context.Background(), filepath.Join(t.TempDir(), "n.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	files := filesOf(t, MostAtOnce+9)
	taken, err := Take(context.Background(), picky{store, casetest.Invented(5).ID}, files, nil, func(int, int) {})
	page, errPage := store.Search(context.Background(), cases.Query{})
	if err != nil || errPage != nil || page.Total != len(files)-1 || len(taken.Met) != page.Total || taken.Files != len(files) {
		t.Errorf("%d are there, %d are told, %v", page.Total, len(taken.Met), err)
	}
	if len(taken.Refused) != 1 || !errors.Is(taken.Refused[0], errPicky) {
		t.Errorf("refused %v", taken.Refused)
	}
}

// An import that is stopped within a sealed set keeps what came of the set: nothing else leads to its cases.
func TestAStoppedImportKeepsItsSet(t *testing.T) {
	mine, ids := notebookOf(t, taught(1), taught(2), taught(4))
	ctx, file := context.Background(), filepath.Join(t.TempDir(), "class.zip")
	if err := WriteClass(ctx, mine, cases.Class{Name: "Tuesday", Cases: ids, Sealed: true}, file); err != nil {
		t.Fatal(err)
	}
	theirs, _ := notebookOf(t)
	stopped, cancel := context.WithCancel(ctx)
	if took, err := Take(stopped, stopping{theirs, cancel}, []string{file}, nil, func(int, int) {}); !errors.Is(err, context.Canceled) || took.Sealed != 1 || len(took.Classes) != 1 {
		t.Fatalf("stopped it is %+v, %v", took, err)
	}
	if took, err := Take(ctx, theirs, []string{file}, nil, func(int, int) {}); err != nil || took.Sealed != 3 {
		t.Fatalf("again it is %+v, %v", took, err)
	}
	if all, err := theirs.Classes(ctx); err != nil || len(all) != 1 || !slices.Equal(all[0].Cases, ids) {
		t.Errorf("the sets are %+v, %v", all, err)
	}
}

// stopping is stopped once it has kept a case shut.
type stopping struct {
	*sqlite.Store
	stop func()
}

func (s stopping) Seal(ctx context.Context, id string, bundle []byte) error {
	defer s.stop()
	return s.Store.Seal(ctx, id, bundle)
}
