package desk

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// Two windows on one notebook: what one kept was gone from the case with the next edit in the other, and neither heard
// of it.
func TestTwoWindowsOnOneCase(t *testing.T) {
	ctx := context.Background()
	store, err := sqlite.Open(ctx, filepath.Join(t.TempDir(), "n.db"), time.Now)
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	told := 0
	sit := func() *Desk {
		d, err := New(ctx, store, rightAway())
		if err != nil {
			t.Fatal(err)
		}
		d.Mind.Crowds.Draws = 2
		d.Told = func(error) { told++ }
		return d
	}
	one, two := sit(), sit()
	one.Begin()
	two.Load(one.Case.ID)
	title := func(text string) func(*cases.Case) { return func(c *cases.Case) { c.Title = text } }
	one.Edit("title", title("theirs"))
	two.Edit("lesson", func(c *cases.Case) { c.Lesson = "mine" })
	if two.Case.Title != "theirs" || two.Case.Lesson != "mine" || told != 1 {
		t.Errorf("there is %q with the lesson %q, told %d times; want both edits, told once", two.Case.Title, two.Case.Lesson, told)
	}
	two.Edit("lesson", func(c *cases.Case) { c.Lesson = "more" })
	if told != 1 {
		t.Error("told of its own edit")
	}
	one.Load(two.Case.ID)
	one.Edit("round", func(c *cases.Case) { c.Rounds = nil })
	two.Edit("label", func(c *cases.Case) { c.Rounds[0].Label = "hot idle" })
	if len(two.Case.Rounds) != 1 || two.Case.Rounds[0].Label != "hot idle" || told != 2 {
		t.Errorf("%d rounds, told %d times", len(two.Case.Rounds), told)
	}
	if two.Undo(); len(two.Case.Rounds) != 0 {
		t.Errorf("a step back there are %d rounds, want none as the other left it", len(two.Case.Rounds))
	}
	if told != 2 {
		t.Errorf("told %d times", told)
	}
}
