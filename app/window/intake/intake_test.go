package intake

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// withDemo takes files into a notebook with the demo's cases, the first of which is open.
func withDemo(t *testing.T) (*Intake, *benchtest.Made) {
	t.Helper()
	m := benchtest.New(t)
	m.FillDemo(t)
	m.Desk.Load(m.Found(t, cases.Query{})[0].ID)
	return New(m.Bench, Ways{Part: func(do func()) { do() }, Opened: func() {}, Home: func() {}}), m
}

func TestImportAsksAboutConflicts(t *testing.T) {
	i, m := withDemo(t)
	mine := m.Desk.Case
	theirs := casetest.Invented(1)
	theirs.ID = mine.ID
	path := filepath.Join(t.TempDir(), "theirs.zip")
	if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteBundle(f, cases.Bundle{Case: theirs}) }); err != nil {
		t.Fatal(err)
	}
	i.Take([]string{path}, 0)
	if c, err := m.Desk.Store.Get(m.Ctx, mine.ID); err != nil || c.Title != mine.Title {
		t.Errorf("before the choice it is %q, %v", c.Title, err)
	}
	total := len(m.Found(t, cases.Query{}))
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.share.keep-both")))
	if len(m.Found(t, cases.Query{})) != total+1 || m.Window.Canvas().Overlays().Top() != nil || m.Desk.Case.Title != theirs.Title {
		t.Errorf("keeping both leaves %d of %d cases, %q open", len(m.Found(t, cases.Query{})), total, m.Desk.Case.Title)
	}
	m.Desk.Load(mine.ID)
	i.settle([]cases.Met{{ID: mine.ID, Theirs: cases.Bundle{Case: theirs}}}, cases.TakeTheirs, func() {})
	if m.Desk.Case.Title != theirs.Title {
		t.Errorf("after the choice %q is open", m.Desk.Case.Title)
	}
	m.Desk.Undo()
	if m.Desk.Case.Title != mine.Title {
		t.Errorf("undone it is %q", m.Desk.Case.Title)
	}
}

// theirsOf are conflicts with the first cases of the list.
func theirsOf(t *testing.T, m *benchtest.Made, n int) (list []cases.Met) {
	t.Helper()
	page, err := m.Desk.Store.Search(m.Ctx, cases.Query{Limit: n})
	if err != nil || len(page.Items) != n {
		t.Fatal(page.Items, err)
	}
	for n, s := range page.Items {
		mine, err := m.Desk.Store.Get(m.Ctx, s.ID)
		if err != nil {
			t.Fatal(err)
		}
		theirs := mine
		theirs.Title = fmt.Sprint("Told differently ", n)
		list = append(list, cases.Met{Meeting: cases.MeetsOther, ID: s.ID, Mine: mine, Theirs: cases.Bundle{Case: theirs}})
	}
	return list
}

// Of several conflicts one choice may settle the rest, and Escape leaves what is left.
func TestOneChoiceSettlesTheRest(t *testing.T) {
	i, m := withDemo(t)
	list := theirsOf(t, m, 3)
	title := func(n int) string {
		c, err := m.Desk.Store.Get(m.Ctx, list[n].ID)
		if err != nil {
			t.Fatal(err)
		}
		return c.Title
	}
	i.took(library.Takings{Files: 3, Of: 3, Met: list, Conflicts: list}, 0)
	if says := benchtest.Says(m.Window); !strings.Contains(says, kit.L("window.share.taken", 0, 0, 3)) {
		t.Errorf("at first it says %q", says)
	}
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.frame.close")))
	if says := benchtest.Says(m.Window); !strings.Contains(says, kit.L("window.share.conflict-of", 1, 3, words.Title(list[0].Mine))) {
		t.Errorf("then it says %q", says)
	}
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.share.keep-mine")))
	m.Window.Canvas().FocusNext()
	m.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if benchtest.Says(m.Window) != "" || title(0) != list[0].Mine.Title || title(1) != list[1].Mine.Title {
		t.Errorf("after Escape %q is shown, and the cases are %q, %q", benchtest.Says(m.Window), title(0), title(1))
	}
	i.ask(list, 3)
	for _, o := range test.LaidOutObjects(m.Window.Canvas().Overlays().Top()) {
		if c, ok := o.(*kit.Check); ok {
			c.SetChecked(true)
		}
	}
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.share.take-theirs")))
	for n := range list {
		if title(n) != list[n].Theirs.Case.Title {
			t.Errorf("case %d is %q", n, title(n))
		}
	}
	if benchtest.Says(m.Window) != "" {
		t.Errorf("at the end it says %q", benchtest.Says(m.Window))
	}
}

func TestAStoppedImportSaysWhatStays(t *testing.T) {
	i, m := withDemo(t)
	i.took(library.Takings{Files: 4, Of: 9, Met: []cases.Met{{Meeting: cases.MeetsNone, ID: m.Desk.Case.ID}}, Titles: []string{"one"}}, 0)
	if says := benchtest.Says(m.Window); !strings.Contains(says, kit.L("window.share.stopped", 4, 9)) {
		t.Errorf("it says %q", says)
	}
}

// Several cases that the notebook has already bring nothing: the one that is worked on stays open. A single one was meant
// to be seen.
func TestWhatIsKnownLeavesTheOpenCase(t *testing.T) {
	i, m := withDemo(t)
	open := m.Desk.Case.ID
	known := m.Found(t, cases.Query{})[1:3]
	same := []cases.Met{{Meeting: cases.MeetsSame, ID: known[0].ID}, {Meeting: cases.MeetsOlder, ID: known[1].ID}}
	if i.took(library.Takings{Met: same, Titles: []string{"", ""}}, 0); m.Desk.Case.ID != open {
		t.Error("a known case took the place of the open one")
	}
	if i.took(library.Takings{Met: same[:1], Titles: []string{""}}, 0); m.Desk.Case.ID != known[0].ID {
		t.Error("the one case that was dropped isn't open")
	}
	if i.took(library.Takings{Met: []cases.Met{{Meeting: cases.MeetsNone, ID: open}, same[1]}, Titles: []string{"", ""}}, 0); m.Desk.Case.ID != open {
		t.Error("the new one of two isn't open")
	}
}

// Of a sealed set nothing is opened and nothing titled: it is told where to go on.
func TestASealedSetIsTakenInUnopened(t *testing.T) {
	i, m := withDemo(t)
	one, two := casetest.Invented(1), casetest.Invented(2)
	for _, c := range []*cases.Case{&one, &two} {
		c.Tags = []string{cases.TaughtTag}
	}
	other := benchtest.New(t)
	ids, err := other.Desk.Store.PutAll(other.Ctx, []cases.Bundle{{Case: one}, {Case: two}}, "test")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "set.zip")
	if err := library.WriteClass(other.Ctx, other.Desk.Store, cases.Class{Name: "Tuesday", Cases: ids, Sealed: true}, path); err != nil {
		t.Fatal(err)
	}
	open, total := m.Desk.Case.ID, len(m.Found(t, cases.Query{}))
	i.Take([]string{path}, 0)
	if m.Desk.Case.ID != open || len(m.Found(t, cases.Query{})) != total {
		t.Errorf("%q is open, of %d cases", m.Desk.Case.Title, len(m.Found(t, cases.Query{})))
	}
	says := benchtest.Says(m.Window)
	if want := kit.L("window.share.sealed", 2); !strings.Contains(says, want) || !strings.Contains(says, "Tuesday") || strings.Contains(says, one.Title) || strings.Contains(says, "0 new") {
		t.Errorf("it says %q, want %q", says, want)
	}
}
