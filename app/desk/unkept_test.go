package desk

import (
	"context"
	"errors"
	"testing"

	"loopbook/cases"
)

// What can't be written stands in the case and goes to the disk with the next edit that can: it was gone from the
// screen, with a word that it wasn't kept.
func TestWhatCantBeWrittenStays(t *testing.T) {
	d := newDesk(t, rightAway())
	told := 0
	d.Told = func(err error) {
		if !errors.Is(err, cases.ErrGone) {
			t.Errorf("told %v", err)
		}
		told++
	}
	d.Begin()
	title := func(text string) { d.Edit("title", func(c *cases.Case) { c.Title = text }) }
	move := moving(t, d)
	onDisk := func() string {
		c, err := d.Store.Get(context.Background(), d.Case.ID)
		if err != nil {
			t.Fatal(err)
		}
		return c.Title
	}
	title("kept")
	move("", ".moved")
	title("one")
	title("two")
	d.Edit("lesson", func(c *cases.Case) { c.Lesson = "three" })
	if what, why := d.Unkept(); why == nil || len(what) != 3 || d.Case.Title != "two" || d.Case.Lesson != "three" || told != 1 {
		t.Fatalf("%q, %q stand there, unkept %v (%v), told %d times", d.Case.Title, d.Case.Lesson, what, why, told)
	}
	d.Redo() // there is nothing
	if d.Undo(); d.Case.Lesson != "" || d.Case.Title != "two" {
		t.Errorf("a step back there is %q, %q", d.Case.Title, d.Case.Lesson)
	}
	if err := d.Keep(); err == nil {
		t.Error("it was kept in no file")
	}
	move(".moved", "")
	if err := d.Keep(); err != nil || onDisk() != "two" {
		t.Errorf("%v; %q is on the disk", err, onDisk())
	}
	move("", ".moved")
	title("four")
	move(".moved", "")
	d.Edit("lesson", func(c *cases.Case) { c.Lesson = "five" })
	if _, why := d.Unkept(); why != nil || onDisk() != "four" {
		t.Errorf("%v; with the next edit %q is on the disk", why, onDisk())
	}
	move("", ".moved")
	title("six")
	d.Undo()
	move(".moved", "")
	if _, why := d.Unkept(); why != nil || d.Case.Title != "four" || !d.History.CanUndo {
		t.Errorf("all undone there is %q, unkept by %v", d.Case.Title, why)
	}
	if d.Undo(); d.Case.Title != "two" || onDisk() != "two" {
		t.Errorf("a step further there is %q", d.Case.Title)
	}
}
