//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"bytes"
	"context"
	"errors"
	"math"
	"os"
	"testing"

	"github.com/oklog/ulid/v2"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestPutKeepsTheWholeCase(t *testing.T) {
	text, err := os.ReadFile("../../testdata/cases/format-example.json")
	if err != nil {
		t.Fatal(err)
	}
	want, err := cases.Decode(bytes.Replace(text, []byte(`"lesson": ""`), []byte(`"newer": {"x": [1]}`), 1))
	if err != nil {
		t.Fatal(err)
	}
	want.Logs[0].EctC[1] = math.NaN() // a gap
	s := open(t)
	got, err := s.Get(context.Background(), put(t, s, want, "import"))
	if err != nil {
		t.Fatal(err)
	}
	a, errA := cases.Encode(want)
	b, errB := cases.Encode(got)
	if errA != nil || errB != nil || !bytes.Equal(a, b) {
		t.Errorf("Get = %s (%v), want %s (%v)", b, errB, a, errA)
	}
}

func TestPutGivesAnID(t *testing.T) {
	s := open(t)
	c := casetest.Invented(1)
	c.ID = ""
	first, second := put(t, s, c, "new"), put(t, s, c, "new")
	if first == second {
		t.Errorf("both new cases have the ID %s", first)
	}
	id, err := ulid.ParseStrict(first)
	if age := ulid.Time(id.Time()).Sub(casetest.Start); err != nil || age < 0 || age.Minutes() > 1 {
		t.Errorf("ID %q (%v) is no ULID by the given clock", first, err)
	}
	if got, err := s.Get(context.Background(), first); err != nil || got.ID != first {
		t.Errorf("Get(%s) = ID %q, %v", first, got.ID, err)
	}
}

func TestPutOfTheSameMakesNoRevision(t *testing.T) {
	s := open(t)
	id := put(t, s, casetest.Invented(1), "new")
	put(t, s, casetest.Invented(1), "again")
	if h, err := s.History(context.Background(), id); err != nil || h.Revision != 1 || h.What != "new" {
		t.Errorf("History = %+v, %v; want revision 1 by new", h, err)
	}
}

func TestPutRefusesWhatCouldNotBeRead(t *testing.T) {
	s := open(t)
	c := casetest.Invented(1)
	c.Rounds[0].EctC = casetest.P(*c.Rounds[0].EctC + 4000)
	_, err := s.Put(context.Background(), c, "slip of a key")
	var invalid cases.Invalid
	if !errors.As(err, &invalid) || invalid[0].Path != "rounds[0].ect_c" {
		t.Errorf("Put = %v, want a fault at rounds[0].ect_c", err)
	}
	if _, err := s.Get(context.Background(), c.ID); !errors.Is(err, cases.ErrNotFound) {
		t.Errorf("Get after the refusal = %v, want ErrNotFound", err)
	}
}

func TestPutAllIsAllOrNothing(t *testing.T) {
	ctx, s := context.Background(), open(t)
	bad := casetest.Invented(3)
	bad.Loop.Layout = "ring"
	all := []cases.Bundle{
		{Case: casetest.Invented(1), Files: map[string][]byte{"photos/1.jpg": {1, 2}}},
		{Case: casetest.Invented(2)},
		{Case: bad},
	}
	if _, err := s.PutAll(ctx, all, "import"); err == nil {
		t.Fatal("PutAll with a bad case: no error")
	}
	if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != 0 {
		t.Errorf("after the refusal there are %d cases (%v), want none", page.Total, err)
	}
	ids, err := s.PutAll(ctx, all[:2], "import")
	if err != nil || len(ids) != 2 || ids[0] != all[0].Case.ID {
		t.Fatalf("PutAll = %v, %v", ids, err)
	}
	if files, err := s.Attachments(ctx, ids[0]); err != nil || len(files) != 1 {
		t.Errorf("Attachments = %v, %v; want the photo", files, err)
	}
}
