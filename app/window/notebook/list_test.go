package notebook

import (
	"testing"

	"loopbook/app/window/bench/benchtest"
)

func TestAFilterIsClickedAndItsSearchKept(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	l := New(m.Bench, Ways{Changed: func() {}})
	l.Turn()
	all := l.pages.total
	l.Search("stage:closed cause:pump-weak")
	if l.pages.total == 0 || l.pages.total >= all {
		t.Errorf("filtered %d of %d", l.pages.total, all)
	}
	l.keepSearch("pumps", "cause:pump-weak")
	list, err := m.Desk.Store.SavedSearches(m.Ctx)
	if err != nil || len(list) != 1 {
		t.Errorf("kept %v, %v", list, err)
	}
	l.Search("peckwell")
	if l.pages.total == 0 || len(l.pages.found) == 0 {
		t.Errorf("a customer's name finds %d, %d snippets", l.pages.total, len(l.pages.found))
	}
}
