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

// What couldn't be written goes beside what another window did meanwhile too: of several edits the last alone did, and the
// whole case as it stood here went over the other's with the next try.
func TestWhatCouldntBeWrittenGoesBesideToo(t *testing.T) {
	for name, again := range map[string]func(*Desk){
		"the next edit": func(d *Desk) { d.Edit("tags", func(c *cases.Case) { c.Tags = []string{"mine"} }) },
		"the next try": func(d *Desk) {
			if err := d.Keep(); err != nil {
				t.Error(err)
			}
		},
	} {
		ctx, d := context.Background(), newDesk(t, rightAway())
		d.Told = func(error) {}
		d.Begin()
		store, move := d.Store, moving(t, d)
		move("", ".moved")
		d.Edit("title", func(c *cases.Case) { c.Title = "mine" })
		d.Edit("lesson", func(c *cases.Case) { c.Lesson = "mine" })
		move(".moved", "")
		theirs, err := store.Get(ctx, d.Case.ID)
		if err != nil {
			t.Fatal(err)
		}
		theirs.Complaint.Text = "theirs"
		if _, err := store.Put(ctx, theirs, "complaint"); err != nil {
			t.Fatal(err)
		}
		again(d)
		now, err := store.Get(ctx, d.Case.ID)
		if err != nil || now.Complaint.Text != "theirs" || now.Title != "mine" || now.Lesson != "mine" || d.Case.Lesson != "mine" {
			t.Errorf("by %s the disk has %q, %q, %q; want theirs and both of mine", name, now.Complaint.Text, now.Title, now.Lesson)
		}
	}
}
