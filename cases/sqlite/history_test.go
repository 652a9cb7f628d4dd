//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"errors"
	"fmt"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestUndoRedoOverReopening(t *testing.T) {
	ctx, s := context.Background(), open(t)
	c := casetest.Invented(1)
	var id string
	for i := 1; i <= 4; i++ {
		c.Title = fmt.Sprintf("title%d", i)
		id = put(t, s, c, fmt.Sprintf("edit%d", i))
	}
	undo := func(want string) {
		t.Helper()
		if c, err := s.Undo(ctx, id); err != nil || c.Title != want {
			t.Fatalf("Undo = %q, %v; want %q", c.Title, err, want)
		}
	}
	redo := func(want string) {
		t.Helper()
		if c, err := s.Redo(ctx, id); err != nil || c.Title != want {
			t.Fatalf("Redo = %q, %v; want %q", c.Title, err, want)
		}
	}
	reopen := func() {
		t.Helper()
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		s = openAt(t, s.Path())
	}
	undo("title3")
	reopen()
	undo("title2")
	h, err := s.History(ctx, id)
	if err != nil || h.Revision != 2 || h.What != "edit2" || !h.CanUndo || !h.CanRedo || h.RedoWhat != "edit3" {
		t.Errorf("History = %+v, %v", h, err)
	}
	if d := h.Saved.Sub(casetest.Start); d <= 0 || d > time.Minute {
		t.Errorf("History.Saved = %v, not by the given clock", h.Saved)
	}
	redo("title3")
	reopen()
	redo("title4")
	if _, err := s.Redo(ctx, id); !errors.Is(err, cases.ErrNothingToRedo) {
		t.Errorf("Redo at the end = %v, want ErrNothingToRedo", err)
	}
	undo("title3")
	undo("title2")
	for _, tt := range []struct {
		text string
		want int
	}{{"title2", 1}, {"title4", 0}} {
		if page, err := s.Search(ctx, cases.Query{Text: tt.text}); err != nil || page.Total != tt.want {
			t.Errorf("Search(%s) after Undo finds %d (%v), want %d", tt.text, page.Total, err, tt.want)
		}
	}
	c.Title = "another way"
	put(t, s, c, "edit")
	if _, err := s.Redo(ctx, id); !errors.Is(err, cases.ErrNothingToRedo) {
		t.Errorf("Redo after a new edit = %v, want ErrNothingToRedo", err)
	}
	undo("title2")
	undo("title1")
	if _, err := s.Undo(ctx, id); !errors.Is(err, cases.ErrNothingToUndo) {
		t.Errorf("Undo at the start = %v, want ErrNothingToUndo", err)
	}
}

func TestUndoBringsLogsBack(t *testing.T) {
	ctx, s := context.Background(), open(t)
	c := casetest.Invented(1)
	c.Logs = []cases.Log{{Name: "warm-up", TimeS: []float64{0, 1}, EctC: []float64{12, 13}}}
	id := put(t, s, c, "log")
	c.Logs = nil
	put(t, s, c, "log removed")
	if got, err := s.Get(ctx, id); err != nil || len(got.Logs) != 0 {
		t.Fatalf("Get = %d logs, %v; want none", len(got.Logs), err)
	}
	if got, err := s.Undo(ctx, id); err != nil || len(got.Logs) != 1 || got.Logs[0].EctC[1] != 13 {
		t.Errorf("Undo = %+v, %v; want the log", got.Logs, err)
	}
}

func TestUnknownCase(t *testing.T) {
	ctx, s := context.Background(), open(t)
	_, errGet := s.Get(ctx, "nobody")
	_, errUndo := s.Undo(ctx, "nobody")
	_, errRedo := s.Redo(ctx, "nobody")
	_, errHistory := s.History(ctx, "nobody")
	_, errFiles := s.Attachments(ctx, "nobody")
	for _, err := range []error{errGet, errUndo, errRedo, errHistory, errFiles, s.Delete(ctx, "nobody")} {
		if !errors.Is(err, cases.ErrNotFound) {
			t.Errorf("unknown case: %v, want ErrNotFound", err)
		}
	}
}
