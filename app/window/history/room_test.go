package history

import (
	"strings"
	"testing"

	"loopbook/app/library"
	"loopbook/app/window/bench/benchtest"
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
