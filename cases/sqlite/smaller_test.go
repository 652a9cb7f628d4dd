//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"fmt"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// attached gives a case a picture and the picture a smaller copy.
func attached(t *testing.T, s *sqlite.Store, id, name, picture string) (hash string) {
	t.Helper()
	ctx := context.Background()
	if err := s.Attach(ctx, id, name, []byte(picture)); err != nil {
		t.Fatal(err)
	}
	hash, err := s.PutAttachment(ctx, []byte(picture))
	if err == nil {
		err = s.KeepSmaller(ctx, hash, []byte("small "+picture))
	}
	if err != nil {
		t.Fatal(err)
	}
	return hash
}

func checkSmaller(t *testing.T, s *sqlite.Store, when, hash, want string) {
	t.Helper()
	data, err := s.Smaller(context.Background(), hash)
	if want == "" && !errors.Is(err, cases.ErrNoFile) || want != "" && (err != nil || string(data) != want) {
		t.Errorf("%s the smaller copy is %q, %v; want %q", when, data, err, want)
	}
}

func TestASmallerCopyGoesWithItsPicture(t *testing.T) {
	ctx, s := context.Background(), open(t)
	a, b := put(t, s, casetest.Invented(1), "new"), put(t, s, casetest.Invented(2), "new")
	own := attached(t, s, a, "photos/1.jpg", "hose")
	shared := attached(t, s, a, "photos/2.jpg", "cap")
	attached(t, s, b, "photos/9.jpg", "cap")
	checkSmaller(t, s, "at first", own, "small hose")
	if err := s.Delete(ctx, a); err != nil {
		t.Fatal(err)
	}
	checkSmaller(t, s, "of a deleted case", own, "")
	checkSmaller(t, s, "while another case has the picture", shared, "small cap")
	if err := s.KeepSmaller(ctx, own, []byte("late")); err != nil {
		t.Errorf("a copy that comes after its case went: %v", err)
	}
	checkSmaller(t, s, "of a deleted case, kept late,", own, "")
	if _, err := s.Restore(ctx, a); err != nil {
		t.Fatal(err)
	}
	if err := s.KeepSmaller(ctx, own, []byte("again")); err != nil {
		t.Fatal(err)
	}
	checkSmaller(t, s, "of a case that was brought back", own, "again")
	if err := s.KeepSmaller(ctx, own, []byte("another")); err != nil {
		t.Fatal(err)
	}
	checkSmaller(t, s, "kept twice", own, "again")
	if err := s.Attach(ctx, a, "photos/1.jpg", []byte("another hose")); err != nil {
		t.Fatal(err)
	}
	checkSmaller(t, s, "of a picture that was replaced", own, "")
	if err := s.Delete(ctx, b); err != nil {
		t.Fatal(err)
	}
	checkSmaller(t, s, "while the first case has the picture", shared, "small cap")
}

// A smaller copy changes nothing that tells a case, and never leaves with it.
func TestASmallerCopyIsNoContent(t *testing.T) {
	ctx, s := context.Background(), open(t)
	id := put(t, s, casetest.Invented(1), "new")
	if err := s.Attach(ctx, id, "photos/1.jpg", []byte("hose")); err != nil {
		t.Fatal(err)
	}
	before, err := s.Digest(ctx, id)
	if err != nil {
		t.Fatal(err)
	}
	attached(t, s, id, "photos/1.jpg", "hose")
	if after, err := s.Digest(ctx, id); err != nil || fmt.Sprint(after) != fmt.Sprint(before) {
		t.Errorf("the digest changed from %+v to %+v, %v", before, after, err)
	}
	if h, err := s.History(ctx, id); err != nil || h.Revision != 1 {
		t.Errorf("the history is %+v, %v", h, err)
	}
	b, err := s.Bundle(ctx, id)
	if err != nil || len(b.Files) != 1 || string(b.Files["photos/1.jpg"]) != "hose" {
		t.Errorf("the bundle holds %q, %v", b.Files, err)
	}
	if met, err := s.Import(ctx, b, "import"); err != nil || met.Meeting != cases.MeetsSame {
		t.Errorf("the bundle meets %q, %v", met.Meeting, err)
	}
}
