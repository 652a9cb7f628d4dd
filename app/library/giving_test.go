package library

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
	"loopbook/cases/sqlite"
)

// notebookOf is a notebook with one case for each, and their ids.
func notebookOf(t *testing.T, bundles ...cases.Bundle) (*sqlite.Store, []string) {
	t.Helper()
	store, err := Open(context.Background(), filepath.Join(t.TempDir(), "n.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	ids, err := store.PutAll(context.Background(), bundles, "test")
	if err != nil {
		t.Fatal(err)
	}
	return store, ids
}

// A case that came alone names pictures that stayed where it came from. It held up every bundle that it was to be in: the
// whole notebook couldn't leave.
func TestACaseWithoutItsPicturesLeavesToo(t *testing.T) {
	alone := casetest.Invented(1)
	alone.Photos = []cases.Photo{{File: "photos/1.jpg", Caption: "the cap"}}
	store, ids := notebookOf(t, cases.Bundle{Case: alone}, cases.Bundle{Case: casetest.Invented(2)})
	for n, some := range [][]string{ids[:1], ids} {
		path := filepath.Join(t.TempDir(), "out.zip")
		if _, err := (Giving{}).Write(context.Background(), store, some, path); err != nil {
			t.Errorf("%d: %v", n, err)
			continue
		}
		var got []cases.Case
		err := exchange.Each(context.Background(), path, func(b cases.Bundle, err error) error {
			got = append(got, b.Case)
			return err
		})
		if err != nil || len(got) != len(some) || len(got[0].Photos) != 1 || got[0].Photos[0].File != "" || got[0].Photos[0].Caption != "the cap" {
			t.Errorf("%d: %d cases came back, the first with the photos %v; %v", n, len(got), got[0].Photos, err)
		}
	}
	path := filepath.Join(t.TempDir(), "out.json")
	if _, err := (Giving{}).Write(context.Background(), store, ids[:1], path); err != nil {
		t.Fatal(err)
	}
	if b, err := exchange.ReadFile(path); err != nil || b.Case.Photos[0].File != "photos/1.jpg" {
		t.Errorf("alone it names %v, %v; want what it named", b.Case.Photos, err)
	}
}

// A search that finds nothing was exported without a word, and no file was there.
func TestNoCaseIsNoFile(t *testing.T) {
	store, _ := notebookOf(t)
	path := filepath.Join(t.TempDir(), "out.zip")
	if files, err := (Giving{}).Write(context.Background(), store, nil, path); err == nil || len(files) > 0 {
		t.Errorf("of no case it writes %v, %v", files, err)
	}
}

// Among many cases nobody finds the one with the picture that can't be read, unless it is named.
func TestThePictureThatHoldsUpAnExportIsNamedWithItsCase(t *testing.T) {
	one := casetest.Invented(1)
	one.Photos = []cases.Photo{{File: "photos/1.jpg"}}
	store, ids := notebookOf(t, cases.Bundle{Case: one, Files: map[string][]byte{"photos/1.jpg": bytes.Repeat([]byte("x"), 9)}})
	_, err := (Giving{}).Write(context.Background(), store, ids, filepath.Join(t.TempDir(), "out.zip"))
	if err == nil || !strings.Contains(err.Error(), ids[0]) || !strings.Contains(err.Error(), one.Title) || !strings.Contains(err.Error(), "photos/1.jpg") {
		t.Errorf("it is told %v", err)
	}
}
