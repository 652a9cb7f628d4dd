package history

import (
	"slices"
	"strings"
	"testing"
	"time"

	"loopbook/app/library"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/experience"
	"loopbook/cases/query"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

func TestTheHistoryPageIsFilled(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	r := New(m.Bench, func(chart.Chart, string, string) {}, Ways{})
	r.Show()
	h, err := library.History(m.Ctx, m.Desk.Store, experience.BandKm)
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

// The first settled case may have no code, engine or odometer: each heading says so, and one case has no middle half.
func TestAHistoryOfOneBareCaseSaysWhatItLacks(t *testing.T) {
	d := dataOf(experience.History{Cases: 1, Closed: 1, Minutes: []experience.Time{{N: 1, Half: 16, Quarter: 16, Three: 16}}}, nil, units.Metric())
	for _, s := range d.Left[:3] {
		if !strings.HasPrefix(s.About, "No settled case") {
			t.Errorf("%s: %q", s.Title, s.About)
		}
	}
	if got := d.Right[2].About; !strings.Contains(got, "one case took 16 min") {
		t.Errorf("minutes: %q", got)
	}
}

// What a number's searches find is together all of its cases, however many causes they had.
func TestALinesNumbersAddUp(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	h, err := library.History(m.Ctx, m.Desk.Store, experience.BandKm)
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

// The bands of the odometer are round in the unit that they are read in, and each finds its cases: those at its edge too, where
// 1 mile is 1.609344 km (international mile, NIST SP 811 B.8).
func TestTheOdometersBandsAreRound(t *testing.T) {
	for unit, want := range map[units.Distance]string{units.Km: "100\u00a0000–150\u00a0000 km, 50\u00a0000–100\u00a0000 km", units.Miles: "60\u00a0000–90\u00a0000 mi, 90\u00a0000–120\u00a0000 mi"} {
		u := units.Metric()
		u.Distance = unit
		var list []cases.Digest
		for _, miles := range []float64{60_000, 89_999.9, 90_000} {
			list = append(list, cases.Digest{Cause: "pump-weak", OdometerKm: miles * 1.609344})
		}
		tally := experience.NewTally(bandKm(u))
		for i := range list {
			tally.Look(&list[i])
		}
		var names []string
		for _, g := range tally.History().Odometer {
			names = append(names, bandName(u)(g.Word))
			found := 0
			for i := range list {
				if g.Where[0].Meets(&list[i]) {
					found++
				}
			}
			if found != g.N {
				t.Errorf("%s counts %d and finds %d", bandName(u)(g.Word), g.N, found)
			}
		}
		slices.Sort(names)
		if got := strings.Join(names, ", "); got != want {
			t.Errorf("bands %s, want %s", got, want)
		}
	}
}

// A repair that came back is told with its own cases: where the first of them was deleted meanwhile, the second stood in its
// place.
func TestALineIsOfItsOwnCase(t *testing.T) {
	m := benchtest.New(t)
	m.FillDemo(t)
	one := m.Found(t, cases.Query{})[0]
	lines, err := linesOf(m.Ctx, m.Desk.Store, experience.History{Returned: []experience.Return{{First: -1, Second: one.Key}}})
	if err != nil || len(lines) != 1 || lines[one.Key].ID != one.ID {
		t.Errorf("the lines are %v, %v; want %s under %d", lines, err, one.ID, one.Key)
	}
}
