//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestAttachments(t *testing.T) {
	ctx, s := context.Background(), open(t)
	id := put(t, s, casetest.Invented(1), "new")
	for name, data := range map[string]string{"photos/b.jpg": "same", "photos/a.jpg": "same", "logs/empty.csv": ""} {
		if err := s.Attach(ctx, id, name, []byte(data)); err != nil {
			t.Fatal(err)
		}
	}
	list, err := s.Attachments(ctx, id)
	if err != nil || len(list) != 3 || list[0].Name != "logs/empty.csv" || list[1].Hash != list[2].Hash || list[2].Size != 4 {
		t.Fatalf("Attachments = %+v, %v", list, err)
	}
	for i, want := range []string{"", "same", "same"} {
		if data, err := s.Attachment(ctx, list[i].Hash); err != nil || string(data) != want {
			t.Errorf("Attachment(%s) = %q, %v; want %q", list[i].Name, data, err, want)
		}
	}
	if hash, err := s.PutAttachment(ctx, []byte("same")); err != nil || hash != list[1].Hash {
		t.Errorf("PutAttachment = %s, %v; want the hash %s", hash, err, list[1].Hash)
	}
	if err := s.Attach(ctx, id, "photos/a.jpg", []byte("other")); err != nil {
		t.Fatal(err)
	}
	if list, err = s.Attachments(ctx, id); err != nil || list[1].Size != 5 {
		t.Errorf("after replacing: %+v, %v", list, err)
	}
	if err := s.Attach(ctx, id, "../a.jpg", nil); !errors.Is(err, cases.ErrFileName) {
		t.Errorf("Attach under ../: %v, want ErrFileName", err)
	}
	if err := s.Attach(ctx, "nobody", "photos/a.jpg", nil); !errors.Is(err, cases.ErrNotFound) {
		t.Errorf("Attach to an unknown case: %v, want ErrNotFound", err)
	}
	if _, err := s.Attachment(ctx, "00"); !errors.Is(err, cases.ErrNoFile) {
		t.Errorf("Attachment of an unknown hash: %v, want ErrNoFile", err)
	}
}
