package benchtest

import (
	"strings"
	"testing"

	"loopbook/app/library"
	"loopbook/cases"
)

// OpenDemo opens one of the invented cases in a new notebook.
func (m *Made) OpenDemo(t testing.TB, title string) {
	t.Helper()
	bundles, err := library.DemoCases()
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range bundles {
		if strings.Contains(b.Case.Title, title) {
			ids, err := m.Desk.Store.PutAll(m.Ctx, []cases.Bundle{b}, "demo")
			if err != nil {
				t.Fatal(err)
			}
			m.Desk.Load(ids[0])
			return
		}
	}
	t.Fatalf("no demo case is titled %q", title)
}

// FillDemo puts all of the invented cases into the notebook.
func (m *Made) FillDemo(t testing.TB) {
	t.Helper()
	if err := library.FillDemo(m.Ctx, m.Desk.Store); err != nil {
		t.Fatal(err)
	}
}

// Found are the cases that a search finds.
func (m *Made) Found(t testing.TB, q cases.Query) []cases.Summary {
	t.Helper()
	q.Limit = 1000
	page, err := m.Desk.Store.Search(m.Ctx, q)
	if err != nil {
		t.Fatal(err)
	}
	return page.Items
}
