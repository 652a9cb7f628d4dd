package warmup_test

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/warmup"
	"loopbook/cases"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

// Temperatures written down stand in the log in the order of time, and one for
// the same moment replaces the other.
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
	minute, degrees := fields(t, v.Content())
	for _, row := range [][2]string{{"1", "20"}, {"3", "41,5"}, {"2", "30"}, {"3", "42"}, {"x", "50"}, {"4", "hot"}} {
		minute.SetText(row[0])
		degrees.SetText(row[1])
		degrees.OnSubmitted(row[1])
	}
	if len(c.Logs) != 1 {
		t.Fatalf("%d logs", len(c.Logs))
	}
	want := [][2]float64{{60, 20}, {120, 30}, {180, 42}}
	for i, l := range want {
		if c.Logs[0].TimeS[i] != l[0] || c.Logs[0].EctC[i] != l[1] {
			t.Errorf("row %d: %g s %g °C, want %v", i, c.Logs[0].TimeS[i], c.Logs[0].EctC[i], l)
		}
	}
	if len(c.Logs[0].TimeS) != len(want) || degrees.Text != "hot" {
		t.Errorf("%d rows, %q left in the field", len(c.Logs[0].TimeS), degrees.Text)
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
	minute, degrees := fields(t, v.Content())
	write := func(at, c string) {
		minute.SetText(at)
		degrees.SetText(c)
		degrees.OnSubmitted(c)
	}
	var stages []*widget.Select
	walk(v.Content(), func(o fyne.CanvasObject) {
		if s, ok := o.(*widget.Select); ok && slices.Contains(s.Options, cases.AfterRepair.Name()) {
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

func fields(t *testing.T, root fyne.CanvasObject) (minute, degrees *kit.Field) {
	t.Helper()
	walk(root, func(o fyne.CanvasObject) {
		if f, ok := o.(*kit.Field); ok {
			switch {
			case f.PlaceHolder == "min":
				minute = f
			default:
				degrees = f
			}
		}
	})
	if minute == nil || degrees == nil {
		t.Fatal("no fields")
	}
	return minute, degrees
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
