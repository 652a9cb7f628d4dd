package notebook

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/cases"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.Local)

func TestPeriod(t *testing.T) {
	date := func(y, m int) time.Time { return time.Date(y, time.Month(m), 1, 0, 0, 0, 0, time.Local) }
	for _, tt := range []struct {
		text     string
		from, to time.Time
	}{
		{"", time.Time{}, time.Time{}},
		{"2014", date(2014, 1), date(2015, 1)},
		{" 2014-03 ", date(2014, 3), date(2014, 4)},
		{"2010-2015", date(2010, 1), date(2016, 1)},
		{"2014-11..2015-01", date(2014, 11), date(2015, 2)},
	} {
		from, to, err := period(tt.text)
		if err != nil || !from.Equal(tt.from) || !to.Equal(tt.to) {
			t.Errorf("period(%q) = %v, %v, %v; want %v, %v", tt.text, from, to, err, tt.from, tt.to)
		}
	}
	for _, bad := range []string{"14", "last week", "2014-13", "2014..x"} {
		if _, _, err := period(bad); err == nil {
			t.Errorf("period(%q): no error", bad)
		}
	}
}

func TestDay(t *testing.T) {
	for _, tt := range []struct {
		at   time.Time
		want string
	}{
		{noon, "today"}, {noon.AddDate(0, 0, -1), "24 Nov"}, {noon.AddDate(-1, 0, 0), "Nov 2025"}, {time.Time{}, ""},
	} {
		if got := day(tt.at, noon); got != tt.want {
			t.Errorf("day(%v) = %q, want %q", tt.at, got, tt.want)
		}
	}
}

func TestSearchAndFiltersAsk(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	test.NewTempWindow(t, v.Content())
	var asked cases.Query
	v.OnQuery = func(q cases.Query) { asked = q }
	test.Type(v.search, "cold f")
	v.states.SetSelected("Settled")
	v.cause.SetSelected(cases.Cause("pump-weak").Name())
	v.years.SetText("2014")
	if asked.Text != "cold f" || len(asked.Where) != 3 {
		t.Errorf("asked %+v", asked)
	}
	v.clear()
	if asked.Text != "cold f" || len(asked.Where) != 0 {
		t.Errorf("after clearing asked %+v, want the words alone", asked)
	}
}

func TestTappingARowOpensIt(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(232, 700))
	v.Row = func(i int) (cases.Summary, bool) { return cases.Summary{ID: "x", Title: "Cold feet"}, true }
	opened := -1
	v.OnOpen = func(row int) { opened = row }
	v.Show(20000, -1)
	v.list.Select(3)
	if opened != 3 {
		t.Errorf("opened row %d, want 3", opened)
	}
	opened = -1
	v.Show(20000, 3) // painting which one is open is no tap
	if opened != -1 {
		t.Errorf("showing opened row %d by itself", opened)
	}
}

func TestAnEmptyAnswerSaysSo(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	test.NewTempWindow(t, v.Content())
	v.Show(0, -1)
	if !v.nothing.Visible() || v.nothing.String() == "" {
		t.Error("an empty notebook says nothing")
	}
	empty := v.nothing.String()
	test.Type(v.search, "zzz")
	v.Show(0, -1)
	if v.nothing.String() == empty {
		t.Error("a search that finds nothing reads like an empty notebook")
	}
}
