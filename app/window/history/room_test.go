package history

import (
	"strings"
	"testing"
	"time"

	"loopbook/app/library"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases/query"
	"loopbook/report/chart"
)

func TestTheHistoryPageIsFilled(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	r := New(m.Bench, func(chart.Chart, string, string) {}, Ways{})
	r.Show()
	h, err := library.History(m.Ctx, m.Desk.Store)
	if err != nil || h.Closed == 0 {
		t.Fatal(h.Closed, err)
	}
	d := dataOf(h, nil, m.Desk.Units)
	if len(d.Left) == 0 || len(d.Left[0].Lines) == 0 || !strings.Contains(d.Left[0].Lines[0].Name.Search, "code:") {
		t.Errorf("history %+v", d.Left)
	}
	for _, l := range d.Left[0].Lines {
		if l.Note == "" {
			t.Errorf("%s of a handful of cases doesn't say that it is few", l.Name.Text)
		}
	}
}

// What a number's searches find is together all of its cases, however many causes they had.
func TestALinesNumbersAddUp(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	h, err := library.History(m.Ctx, m.Desk.Store)
	if err != nil {
		t.Fatal(err)
	}
	found := func(search string) int {
		page, err := m.Desk.Store.Search(m.Ctx, query.Parse(search, time.UTC).Query)
		if err != nil {
			t.Fatal(search, err)
		}
		return page.Total
	}
	for _, l := range groupLines(h.Months, monthName) {
		all := 0
		for _, p := range l.Parts {
			all += found(p.Search)
		}
		if want := found(l.Name.Search); all != want {
			t.Errorf("%s: what it turned out to be is %d cases, want %d: %+v", l.Name.Text, all, want, l.Parts)
		}
	}
}
