package notebook

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
)

func TestAFilterIsClicked(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	l := New(m.Bench, Ways{Changed: func() {}})
	l.Turn()
	all := l.pages.total
	l.Search("stage:closed cause:pump-weak")
	if l.pages.total == 0 || l.pages.total >= all {
		t.Errorf("filtered %d of %d", l.pages.total, all)
	}
	l.Search("peckwell")
	if l.pages.total == 0 || len(l.pages.found) == 0 {
		t.Errorf("a customer's name finds %d, %d snippets", l.pages.total, len(l.pages.found))
	}
}

// What is searched for begins at its first case: the list stood where the open one is, with the best hits above it.
func TestASearchBeginsAtItsFirstCase(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	l := New(m.Bench, Ways{Changed: func() {}})
	m.Window.SetContent(l.Content())
	m.Window.Resize(fyne.NewSize(232, 400))
	l.Turn()
	var list *kit.List
	for _, o := range test.LaidOutObjects(l.Content()) {
		if found, ok := o.(*kit.List); ok {
			list = found
		}
	}
	last, _ := l.pages.row(l.pages.total - 1)
	m.Desk.Load(last.ID)
	l.Show()
	if list.GetScrollOffset() == 0 {
		t.Fatal("the open case isn't scrolled to")
	}
	if l.Search("stage:closed"); list.GetScrollOffset() != 0 {
		t.Errorf("the list begins %g further down", list.GetScrollOffset())
	}
	list.ScrollToOffset(90)
	if l.Again(); list.GetScrollOffset() != 90 {
		t.Errorf("searched again, the list is at %g", list.GetScrollOffset())
	}
}

// A search gets the name that its owner gives it, and may get another; nothing else of that name is lost unasked.
func TestASearchIsKeptUnderAName(t *testing.T) {
	m := benchtest.New(t)
	l := New(m.Bench, Ways{Changed: func() {}})
	l.Turn()
	answer := func(name string) {
		t.Helper()
		f, ok := m.Window.Canvas().Focused().(interface {
			fyne.Focusable
			SetText(string)
		})
		if !ok {
			t.Fatalf("no name is asked for: %T has the focus", m.Window.Canvas().Focused())
		}
		f.SetText(name)
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	kept := func(want string) {
		t.Helper()
		list, err := m.Desk.Store.SavedSearches(m.Ctx)
		got := ""
		for _, s := range list {
			got += s.Name + "=" + s.Query + ";"
		}
		if err != nil || got != want {
			t.Errorf("kept %q, want %q (%v)", got, want, err)
		}
	}
	l.keepSearch("cause:pump-weak")
	answer("Pumps")
	l.keepSearch("code:P0128")
	answer(" ")
	kept("Pumps=cause:pump-weak;")
	l.renameSearch("Pumps")
	answer("Weak pumps")
	kept("Weak pumps=cause:pump-weak;")
	l.keepSearch("code:P0128")
	answer("Weak pumps") // asks first
	kept("Weak pumps=cause:pump-weak;")
	if !m.Ask.Asking() {
		t.Error("a search of that name is replaced unasked")
	}
}

// The filters count the cases that are shown where a mistyped word was read as another.
func TestFiltersCountWhatAMistypedWordFinds(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	l := New(m.Bench, Ways{Changed: func() {}})
	l.Turn()
	l.Search("radator")
	counted := 0
	l.pages.count(func(f cases.Facets) {
		for _, c := range f[cases.ByCause] {
			counted += c.N
		}
	})
	if l.pages.readAs == "" || counted == 0 {
		t.Errorf("read as %q with %d cases, the filters count %d", l.pages.readAs, l.pages.total, counted)
	}
}
