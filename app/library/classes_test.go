package library

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

// A class set goes to another notebook with its name and its order, without a customer's name; taken in twice it is one,
// and one of that name which is there already stays.
func TestAClassSetIsHandedOver(t *testing.T) {
	first, second := casetest.Invented(1), casetest.Invented(2)
	first.Customer.Name = "Dorian Peckwell"
	second.Title, second.Tags = "the simulated one", []string{cases.TaughtTag}
	mine, ids := notebookOf(t, cases.Bundle{Case: first}, cases.Bundle{Case: second})
	ctx, path := context.Background(), filepath.Join(t.TempDir(), "class.zip")
	class := cases.Class{Name: "Tuesday", Cases: []string{ids[1], "gone", ids[0]}}
	if err := WriteClass(ctx, mine, class, path); err != nil {
		t.Fatal(err)
	}
	theirs, others := notebookOf(t, cases.Bundle{Case: casetest.Invented(3)})
	if err := theirs.SaveClass(ctx, cases.Class{Name: "Tuesday", Cases: others}); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		took, err := Take(ctx, theirs, []string{path}, strings.NewReader(""), func(int, int) {})
		if err != nil || len(took.Refused) > 0 {
			t.Fatal(err, took.Refused)
		}
		if len(took.Classes) != 1 || took.Classes[0].Name != "Tuesday (2)" {
			t.Fatalf("kept as %+v", took.Classes)
		}
	}
	all, err := theirs.Classes(ctx)
	if err != nil || len(all) != 2 || !slices.Equal(all[0].Cases, others) || len(all[1].Cases) != 2 {
		t.Fatalf("they have %+v, %v", all, err)
	}
	at := func(n int) cases.Case {
		c, err := theirs.Get(ctx, all[1].Cases[n])
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	if at(0).ID != ids[1] || at(0).Title != second.Title || at(1).Customer.Name != "" || at(1).ID == ids[0] {
		t.Errorf("the cases are %q of %q and %q of %q", at(0).ID, at(0).Title, at(1).ID, at(1).Customer.Name)
	}
	if err := WriteClass(ctx, mine, cases.Class{Name: "Empty", Cases: []string{"gone"}}, path); err == nil {
		t.Error("a set whose cases are gone was written")
	}
	if err := mine.Retire(ctx, ids[0], true); err != nil {
		t.Fatal(err)
	}
	if err := WriteClass(ctx, mine, class, path); err != nil {
		t.Fatal(err)
	}
	third, _ := notebookOf(t)
	if took, err := Take(ctx, third, []string{path}, strings.NewReader(""), func(int, int) {}); err != nil || !slices.Equal(took.Classes[0].Cases, ids[1:2]) {
		t.Errorf("with one of them out of practice came %+v, %v", took.Classes, err)
	}
}

// A list of the evening's cases shows a case and its taught copy: only the copy leaves, in its place, and the set stays
// whole. Both have one id once the case is anonymous, and the second was refused.
func TestACaseAndItsTaughtCopyLeaveOnce(t *testing.T) {
	mine, ids := notebookOf(t, cases.Bundle{Case: casetest.Invented(1)}, cases.Bundle{Case: casetest.Invented(2)})
	ctx, path := context.Background(), filepath.Join(t.TempDir(), "class.zip")
	taught, err := Teach(ctx, mine, ids[0], nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := WriteClass(ctx, mine, cases.Class{Name: "Tuesday", Cases: []string{ids[0], ids[1], taught.ID}}, path); err != nil {
		t.Fatal(err)
	}
	theirs, _ := notebookOf(t)
	took, err := Take(ctx, theirs, []string{path}, strings.NewReader(""), func(int, int) {})
	if err != nil || len(took.Refused) > 0 || len(took.Classes) != 1 || len(took.Classes[0].Cases) != 2 || took.Classes[0].Cases[1] != taught.ID {
		t.Fatalf("taken as %+v, %v, %v", took.Classes, took.Refused, err)
	}
}

// A set that comes again with more at its end, since its trainer added to it or the last import was stopped, is the same one:
// who is half through goes on. One that comes in another order is another.
func TestASetThatHasGrownIsTheSame(t *testing.T) {
	mine, ids := notebookOf(t, taught(1), taught(2), taught(4))
	ctx, path := context.Background(), filepath.Join(t.TempDir(), "class.zip")
	theirs, _ := notebookOf(t)
	comes := func(name string, ids ...string) {
		t.Helper()
		if err := WriteClass(ctx, mine, cases.Class{Name: "Tuesday", Cases: ids, Sealed: true}, path); err != nil {
			t.Fatal(err)
		}
		took, err := Take(ctx, theirs, []string{path}, nil, func(int, int) {})
		if err != nil || len(took.Refused) > 0 || len(took.Classes) != 1 || took.Classes[0].Name != name || !slices.Equal(took.Classes[0].Cases, ids) {
			t.Errorf("it is kept as %+v, %v, %v; want %q", took.Classes, took.Refused, err, name)
		}
	}
	comes("Tuesday", ids[:2]...)
	comes("Tuesday", ids...)
	comes("Tuesday (2)", ids[1], ids[0], ids[2])
	comes("Tuesday (3)", ids[:2]...)
	if all, err := theirs.Classes(ctx); err != nil || len(all) != 3 || !slices.Equal(all[0].Cases, ids) {
		t.Errorf("they have %+v, %v", all, err)
	}
	for name, want := range map[string]string{"Tuesday (2)": "Tuesday", "Tuesday": "Tuesday", "Tuesday (late)": "Tuesday (late)", "Tuesday (02)": "Tuesday (02)", "Tuesday (2": "Tuesday (2"} {
		if got := unnumbered(name); got != want {
			t.Errorf("unnumbered(%q) = %q, want %q", name, got, want)
		}
	}
}
