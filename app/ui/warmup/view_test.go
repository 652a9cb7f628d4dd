package warmup_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/warmup"
	"loopbook/cases"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

// Temperatures written down stand in the log in the order of time. The same row may be entered twice; one that
// says something else of its moment is refused.
func TestWritingDown(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	var v *warmup.View
	v = warmup.New(func(_ string, change func(*cases.Case)) {
		change(&c)
		v.Show(warmup.Data{Case: c, Log: len(c.Logs) - 1, Units: units.Metric()})
	}, time.Now)
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	v.Show(warmup.Data{Case: c, Log: -1, Units: units.Metric()})
	minute, degrees, _, _ := fields(t, v.Content())
	for _, row := range [][2]string{{"1", "20"}, {"3", "41,5"}, {"2", "30"}, {"3", "41.5"}, {"3", "42"}, {"x", "50"}, {"4", "390"}, {"4", "hot"}} { // no coolant is at 390 °C
		minute.SetText(row[0])
		degrees.SetText(row[1])
		degrees.OnSubmitted(row[1])
	}
	if len(c.Logs) != 1 {
		t.Fatalf("%d logs", len(c.Logs))
	}
	want := [][2]float64{{60, 20}, {120, 30}, {180, 41.5}}
	for i, l := range want {
		if c.Logs[0].TimeS[i] != l[0] || c.Logs[0].EctC[i] != l[1] {
			t.Errorf("row %d: %g s %g °C, want %v", i, c.Logs[0].TimeS[i], c.Logs[0].EctC[i], l)
		}
	}
	if len(c.Logs[0].TimeS) != len(want) || degrees.Text != "hot" {
		t.Errorf("%d rows, %q left in the field", len(c.Logs[0].TimeS), degrees.Text)
	}
}

// How the car was run is written down where it is known: the columns are as long as
// the time, with gaps, and the case can be kept.
func TestADriveIsWrittenDown(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	v := warmup.New(func(_ string, change func(*cases.Case)) { change(&c) }, time.Now)
	test.NewTempWindow(t, v.Content()).Resize(fyne.NewSize(1040, 640))
	v.Show(warmup.Data{Case: c, Log: -1, Units: units.US()})
	minute, degrees, rpm, speed := fields(t, v.Content())
	for _, row := range [][4]string{{"1", "68", "", ""}, {"3", "104", "2000", "50"}, {"2", "86", "", ""}, {"4", "122", "25000", ""}} {
		for i, f := range []*kit.Field{minute, degrees, rpm, speed} {
			f.SetText(row[i])
		}
		degrees.OnSubmitted(row[1])
	}
	l := c.Logs[0]
	if len(l.TimeS) != 3 || len(l.EngineRPM) != 3 || len(l.SpeedKmh) != 3 || rpm.Text != "25000" || degrees.Text != "122" {
		t.Fatalf("log %+v, left in the fields: %q, %q", l, rpm.Text, degrees.Text)
	}
	// The international mile: 1.609344 km (NIST SP 811, appendix B.8).
	if l.EngineRPM[2] != 2000 || math.Abs(l.SpeedKmh[2]-80.4672) > 1e-9 || !math.IsNaN(l.EngineRPM[0]) || !math.IsNaN(l.SpeedKmh[1]) {
		t.Errorf("rpm %v, km/h %v", l.EngineRPM, l.SpeedKmh)
	}
	text, err := cases.Encode(c)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := cases.Decode(text); err != nil {
		t.Error(err)
	}
}

// A warm-up after the repair is written into a log of its own, and a log's stage
// can be mended.
func TestBothStagesAreWrittenDown(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	var v *warmup.View
	v = warmup.New(func(_ string, change func(*cases.Case)) {
		change(&c)
		v.Show(warmup.Data{Case: c, Log: len(c.Logs) - 1, Units: units.Metric()})
	}, time.Now)
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	v.Show(warmup.Data{Case: c, Log: -1, Units: units.Metric()})
	minute, degrees, _, _ := fields(t, v.Content())
	write := func(at, c string) {
		minute.SetText(at)
		degrees.SetText(c)
		degrees.OnSubmitted(c)
	}
	var stages []*kit.Select
	walk(v.Content(), func(o fyne.CanvasObject) {
		if s, ok := o.(*kit.Select); ok && slices.Contains(s.Options, cases.AfterRepair.Name()) {
			stages = append(stages, s)
		}
	})
	if len(stages) != 2 {
		t.Fatalf("%d choices of a stage", len(stages))
	}
	hand, shown := stages[0], stages[1]
	if hand.Selected == "" {
		hand, shown = shown, hand // there is no log yet that it could be of
	}
	write("1", "20")
	hand.SetSelected(cases.AfterRepair.Name())
	write("1", "25")
	write("2", "35")
	if len(c.Logs) != 2 || c.Logs[0].Stage != cases.BeforeRepair || c.Logs[1].Stage != cases.AfterRepair || len(c.Logs[1].TimeS) != 2 {
		t.Fatalf("logs %+v", c.Logs)
	}
	shown.SetSelected(cases.BeforeRepair.Name())
	if c.Logs[1].Stage != cases.BeforeRepair {
		t.Errorf("the shown log is of %q", c.Logs[1].Stage)
	}
}

// What is typed as the minute replaces the one that stands there, and the clock leaves it alone
// until its row is kept.
func TestATypedMinuteHoldsAgainstTheClock(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	now := time.Date(2024, 2, 5, 8, 0, 0, 0, time.UTC)
	v := warmup.New(func(_ string, change func(*cases.Case)) { change(&c) }, func() time.Time { return now })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	v.Show(warmup.Data{Case: c, Log: -1, Units: units.Metric()})
	minute, degrees, _, _ := fields(t, v.Content())
	typed := func(f *kit.Field, text string) {
		w.Canvas().Focus(f)
		for _, r := range text {
			f.TypedRune(r)
			v.Tick()
		}
	}
	keep := func() { degrees.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) }
	row := func(at, c string) {
		typed(minute, at)
		typed(degrees, c)
		keep()
	}
	row("1", "20")
	typed(degrees, "30")
	keep()
	row("12", "80")
	if got := c.Logs[0].TimeS; !slices.Equal(got, []float64{60, 120, 720}) {
		t.Errorf("without the clock rows at %v s", got)
	}
	clock := button(t, v.Content(), "Engine starts")
	test.Tap(clock)
	now = now.Add(14 * time.Minute)
	row("13", "85")
	typed(degrees, "88")
	keep()
	if got := c.Logs[0].TimeS; !slices.Equal(got, []float64{60, 120, 720, 780, 840}) {
		t.Errorf("with the clock rows at %v s", got)
	}
	test.Tap(clock)
}

// The row that would come next goes with the log that it would stand in.
func TestARemovedLogLeavesNoRow(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	var v *warmup.View
	show := func() { v.Show(warmup.Data{Case: c, Log: len(c.Logs) - 1, Units: units.Metric()}) }
	v = warmup.New(func(_ string, change func(*cases.Case)) {
		change(&c)
		show()
	}, time.Now)
	test.NewTempWindow(t, v.Content()).Resize(fyne.NewSize(1040, 640))
	show()
	minute, degrees, rpm, _ := fields(t, v.Content())
	minute.SetText("1")
	rpm.SetText("800")
	degrees.SetText("20")
	degrees.OnSubmitted("20")
	c.Logs = append(c.Logs, cases.Log{Name: "drive"})
	show()
	remove := button(t, v.Content(), "Remove this log")
	test.Tap(remove)
	if minute.Text != "2" || rpm.Text != "800" {
		t.Errorf("with another log gone the row says minute %q, rpm %q; want 2 and 800", minute.Text, rpm.Text)
	}
	test.Tap(remove)
	if len(c.Logs) != 0 || minute.Text != "" || rpm.Text != "" {
		t.Errorf("%d logs are left, and the row says minute %q, rpm %q", len(c.Logs), minute.Text, rpm.Text)
	}
}

// The curve fills its room, and says what stands under the pointer.
func TestShowsTheCurve(t *testing.T) {
	test.NewTempApp(t)
	v := warmup.New(func(string, func(*cases.Case)) {}, time.Now)
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	v.Show(warmup.Data{
		Case: cases.Case{ID: "a", Logs: []cases.Log{{Name: "drive"}}}, Units: units.Metric(),
		Lines: chart.Lines{X: "min", Y: "°C", Curves: []chart.Curve{{X: []float64{0, 10, 20}, Y: []float64{20, 80, 90}}}},
		Facts: []warmup.Fact{{What: "Holds", Value: "90 °C"}},
	})
	var view *kit.ChartView
	walk(v.Content(), func(o fyne.CanvasObject) {
		if c, ok := o.(*kit.ChartView); ok {
			view = c
		}
	})
	if view == nil || !view.Visible() || view.Size().Width < 500 {
		t.Fatalf("no curve: %v", view)
	}
}

// fields are those that are written into, in their order.
func fields(t *testing.T, root fyne.CanvasObject) (minute, degrees, rpm, speed *kit.Field) {
	t.Helper()
	var all []*kit.Field
	walk(root, func(o fyne.CanvasObject) {
		if f, ok := o.(*kit.Field); ok {
			all = append(all, f)
		}
	})
	if len(all) != 4 {
		t.Fatalf("%d fields", len(all))
	}
	return all[0], all[1], all[2], all[3]
}

func button(t *testing.T, root fyne.CanvasObject, words string) (found *kit.Button) {
	t.Helper()
	walk(root, func(o fyne.CanvasObject) {
		if b, ok := o.(*kit.Button); ok && b.Text == words {
			found = b
		}
	})
	if found == nil {
		t.Fatalf("no button says %q", words)
	}
	return found
}

func walk(o fyne.CanvasObject, each func(fyne.CanvasObject)) {
	each(o)
	if w, ok := o.(fyne.Widget); ok {
		if _, entry := o.(*kit.Field); entry {
			return
		}
		for _, inner := range test.WidgetRenderer(w).Objects() {
			walk(inner, each)
		}
	}
	if c, ok := o.(*fyne.Container); ok {
		for _, inner := range c.Objects {
			walk(inner, each)
		}
	}
}
