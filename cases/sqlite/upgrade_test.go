//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// old is a copy of a notebook as an earlier version left it.
func old(t *testing.T, name string) *sqlite.Store {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return openAt(t, path)
}

// TestVersion1 brings the first version's notebook up to date: twelve invented cases,
// one edited, one with an edit taken back, one deleted, one with a file.
func TestVersion1(t *testing.T) {
	ctx, s := context.Background(), old(t, "version-1.db")
	if page, err := s.Search(ctx, cases.Query{}); err != nil || page.Total != 11 {
		t.Fatalf("it holds %d cases, %v; want 11", page.Total, err)
	}
	var lefts []int
	if err := s.Refresh(ctx, func(left int) { lefts = append(lefts, left) }); err != nil {
		t.Fatal(err)
	}
	if len(lefts) != 1 || lefts[0] != 0 {
		t.Errorf("progress said %v are left, want 0 once", lefts)
	}
	n := 0
	if err := s.EachDigest(ctx, func(*cases.Digest) { n++ }); err != nil || n != 11 {
		t.Errorf("%d digests, %v; want 11", n, err)
	}
	if page, err := s.Search(ctx, cases.Query{Text: "bouganvillea"}); err != nil || page.Total != 1 || page.ReadAs != "bougainvillea" {
		t.Errorf("a mistyped word finds %+v, %v", page, err)
	}
	if met, err := s.Import(ctx, cases.Bundle{Case: casetest.Invented(3)}, "import"); err != nil || met.Meeting != cases.MeetsOlder {
		t.Errorf("an earlier revision = %+v, %v; want it known", met.Meeting, err)
	}
	if c, err := s.Redo(ctx, casetest.Invented(4).ID); err != nil || c.Title != "Taken back" {
		t.Errorf("Redo = %q, %v", c.Title, err)
	}
	if _, err := s.Restore(ctx, casetest.Invented(5).ID); err != nil {
		t.Error(err)
	}
	if files, err := s.Attachments(ctx, casetest.Invented(6).ID); err != nil || len(files) != 1 {
		t.Errorf("files %v, %v", files, err)
	}
	if page, err := s.Search(ctx, cases.Query{Where: []cases.Condition{is(cases.ByStage, "open", "closed")}}); err != nil || page.Total != 12 {
		t.Errorf("filtered %d, %v; want 12 with the one that was brought back", page.Total, err)
	}
}

// TestVersion2 brings the second version's notebook up to date: six invented cases, two
// with a picture of which one is deleted, one with a verdict and what was held likeliest.
func TestVersion2(t *testing.T) {
	ctx, s := context.Background(), old(t, "version-2.db")
	if page, err := s.Search(ctx, cases.Query{Text: "hose"}); err != nil || page.Total == 0 {
		t.Errorf("a word of a photo finds %d, %v", page.Total, err)
	}
	if d, err := s.Digest(ctx, casetest.Invented(4).ID); err != nil || d.Guess.First != "pump-weak" {
		t.Errorf("the guess is %+v, %v", d.Guess, err)
	}
	n := 0
	if err := s.EachDigest(ctx, func(*cases.Digest) { n++ }); err != nil || n != 5 {
		t.Errorf("%d digests, %v; want 5 without a refreshing", n, err)
	}
	files, err := s.Attachments(ctx, casetest.Invented(2).ID)
	if err != nil || len(files) != 1 {
		t.Fatal(files, err)
	}
	checkSmaller(t, s, "before it is made", files[0].Hash, "")
	if err := s.KeepSmaller(ctx, files[0].Hash, []byte("small")); err != nil {
		t.Fatal(err)
	}
	checkSmaller(t, s, "once made", files[0].Hash, "small")
	if _, err := s.Restore(ctx, casetest.Invented(3).ID); err != nil {
		t.Error(err)
	}
}

// TestVersion3 brings the third version's notebook up to date, whose index holds the
// layouts: twelve invented cases, one deleted, one edited last, one with a picture.
func TestVersion3(t *testing.T) {
	ctx, s := context.Background(), old(t, "version-3.db")
	edited, deleted := casetest.Invented(8), casetest.Invented(4)
	edited.Lesson = "The thermostat wasn't it."
	var tell []string
	for n := range 12 {
		c := casetest.Invented(n)
		if c.ID == edited.ID {
			c = edited
		}
		if tellsOf(t, c, "thermostat") && c.ID != deleted.ID {
			tell = append(tell, c.ID)
		}
	}
	find := func(text string) []string {
		t.Helper()
		page, err := s.Search(ctx, cases.Query{Text: text, Sort: cases.Oldest})
		if err != nil {
			t.Fatal(err)
		}
		ids := []string{}
		for _, item := range page.Items {
			ids = append(ids, item.ID)
		}
		return ids
	}
	if got := find("thermostat"); len(got) != 11 {
		t.Errorf("before the refreshing %v tell of a thermostat, want all", got)
	}
	if err := s.Refresh(ctx, nil); err != nil {
		t.Fatal(err)
	}
	if got := find("thermostat"); !slices.Equal(got, tell) || len(got) != 3 {
		t.Errorf("after it %v tell of a thermostat, want %v", got, tell)
	}
	if got, err := s.Snippets(ctx, tell, "thermostat"); err != nil || len(got) != len(tell) {
		t.Errorf("%d of %d are shown where, %v", len(got), len(tell), err)
	}
	for _, text := range []string{"outlet", "outlte"} {
		if got := find(text); len(got) != 0 {
			t.Errorf("%q finds %v, want none: no case tells of one", text, got)
		}
	}
	last := cases.Query{Where: []cases.Condition{is(cases.ByStage, "open", "closed")}, Sort: cases.Recently, Limit: 1}
	if page, err := s.Search(ctx, last); err != nil || page.Items[0].ID != edited.ID {
		t.Errorf("the one changed last is %+v, %v; want %s: a refreshing is no change", page.Items, err, edited.ID)
	}
	if page, err := s.Search(ctx, cases.Query{Text: deleted.ID}); err != nil || page.Total != 0 {
		t.Errorf("a deleted case is found: %+v, %v", page.Items, err)
	}
	if _, err := s.Restore(ctx, deleted.ID); err != nil || len(find("thermostat")) != 4 {
		t.Errorf("brought back it isn't found, %v", err)
	}
}

// tellsOf asks of a case as it is written whether anything but its layout has the word.
func tellsOf(t *testing.T, c cases.Case, word string) bool {
	t.Helper()
	c.Loop.Layout = ""
	text, err := cases.Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Contains(strings.ToLower(string(text)), word)
}

// TestRefreshGoesOnWhereItStopped: what was brought up to date stays so, an edit
// between needs no refreshing, and searches find everything all the while.
func TestRefreshGoesOnWhereItStopped(t *testing.T) {
	s := openAt(t, filepath.Join(t.TempDir(), "n.db"))
	fill(t, s, 250)
	alter(t, s.Path(), `UPDATE cases SET stale = 1`)
	ctx, stop := context.WithCancel(context.Background())
	err := s.Refresh(ctx, func(int) { stop() })
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("Refresh = %v, want it stopped", err)
	}
	c := casetest.Invented(249)
	c.Lesson = "edited meanwhile"
	put(t, s, c, "lesson")
	if n := totalOf(t, s, cases.Query{Text: "maker"}); n != 250 {
		t.Errorf("half-way a word of every case finds %d, want 250", n)
	}
	var lefts []int
	if err := s.Refresh(context.Background(), func(left int) { lefts = append(lefts, left) }); err != nil || !slices.Equal(lefts, []int{49, 0}) {
		t.Errorf("then %v were left, %v; want 49 and 0", lefts, err)
	}
	if n := totalOf(t, s, cases.Query{Text: "maker"}); n != 250 {
		t.Errorf("after it a word of every case finds %d, want 250", n)
	}
}

// A notebook that can't be written is searched as the older program left it: the command line refused it, and the window
// said at each start that something did not work.
func TestANotebookThatCannotBeWrittenIsSearched(t *testing.T) {
	s := openAt(t, filepath.Join(t.TempDir(), "n.db"))
	fill(t, s, 20)
	alter(t, s.Path(), `UPDATE cases SET stale = 1`)
	s.WriteProtected(t)
	if _, err := s.Put(context.Background(), casetest.Invented(21), "new"); !errors.Is(err, cases.ErrReadOnly) {
		t.Fatalf("Put = %v, want ErrReadOnly", err)
	}
	if err := s.Refresh(context.Background(), nil); err != nil {
		t.Errorf("Refresh = %v", err)
	}
	if n := totalOf(t, s, cases.Query{Text: "maker"}); n != 20 {
		t.Errorf("a word of every case finds %d, want 20", n)
	}
}

func TestDigestsFollowTheCases(t *testing.T) {
	ctx, s := context.Background(), open(t)
	s.Enrich(func(c *cases.Case, d *cases.Digest) {
		d.Deltas, d.Minutes = []cases.Deviation{{Name: "across-radiator", Z: 1.5}}, 12
	})
	fill(t, s, 200)
	find := func(id string) (out *cases.Digest) {
		d, err := s.Digest(ctx, id)
		if err == nil {
			out = &d
		}
		return out
	}
	count := func() (n int) {
		if err := s.EachDigest(ctx, func(*cases.Digest) { n++ }); err != nil {
			t.Fatal(err)
		}
		return n
	}
	id := casetest.Invented(70).ID
	d, c := find(id), casetest.Invented(70)
	if d == nil || d.Layout != c.Loop.Layout || d.Codes[0] != c.Codes[0].Code || d.Year != *c.Vehicle.Year || !d.Opened.Equal(c.Opened) ||
		d.Deltas[0].Z != 1.5 || d.Minutes != 12 || !d.Before || d.Make != c.Vehicle.Make || d.Motive != c.Vehicle.Motive {
		t.Fatalf("digest %+v of %+v", d, c.Vehicle)
	}
	c.Verdict = cases.Verdict{Cause: "cap-weak", ConfirmedBy: "cap"}
	put(t, s, c, "verdict")
	if err := s.SetGuess(ctx, id, "cap-weak", cases.Guess{First: "pump-weak", FirstP: 0.5, TruthP: 0.25}); err != nil {
		t.Fatal(err)
	}
	if d := find(id); d.Cause != "cap-weak" || !d.Confirmed || d.Guess != (cases.Guess{First: "pump-weak", FirstP: 0.5, TruthP: 0.25}) {
		t.Errorf("after the verdict %+v", d)
	}
	c.Verdict.Cause = "pump-weak" // another verdict than the one that the guess was held against
	put(t, s, c, "verdict")
	if d := find(id); d.Guess.First != "" {
		t.Errorf("the guess of another verdict counts: %+v", d.Guess)
	}
	if err := s.Delete(ctx, id); err != nil {
		t.Fatal(err)
	}
	if find(id) != nil || count() != 199 {
		t.Errorf("a deleted case counts: %d", count())
	}
	if _, err := s.Restore(ctx, id); err != nil || find(id) == nil || count() != 200 {
		t.Errorf("brought back it doesn't count: %v, %d", err, count())
	}
	other := openAt(t, s.Path()) // what another window writes is seen
	put(t, other, casetest.Invented(300), "new")
	if count() != 201 {
		t.Errorf("%d digests, want 201", count())
	}
}

// A reading of the digests that broke off had taken some of them up and not in which order they stand: no search, count
// or statistic of that session found those cases again.
func TestAReadingThatBreaksOffIsGoneOnWith(t *testing.T) {
	path := filepath.Join(t.TempDir(), "n.db")
	s := openAt(t, path)
	fill(t, s, 70)
	count := func() (n int, err error) {
		err = s.EachDigest(context.Background(), func(*cases.Digest) { n++ })
		return n, err
	}
	s.Close()
	alter(t, path, `CREATE TABLE aside AS SELECT * FROM digests; UPDATE digests SET data = x'ff' WHERE chunk = 1`)
	s = openAt(t, path)
	if _, err := count(); err == nil {
		t.Fatal("a digest that is cut short was read")
	}
	alter(t, path, `DELETE FROM digests WHERE chunk = 1`)
	if n, err := count(); err != nil || n != 63 {
		t.Errorf("the reading goes on with %d digests, %v; want the 63 that are whole", n, err)
	}
	alter(t, path, `INSERT INTO digests SELECT * FROM aside WHERE chunk = 1`)
	if n, err := count(); err != nil || n != 70 {
		t.Errorf("the reading ends with %d digests, %v; want 70", n, err)
	}
}
