package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// A check that is typed in its tab is kept, judged and weighed.
func TestACheckIsTypedAndWeighed(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.goToChecks()
	if w.window.Canvas().Focused() != w.checks.Focus() {
		t.Fatal("the list of checks has no focus")
	}
	w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	for _, text := range []string{"100", "60"} {
		for _, r := range text {
			w.window.Canvas().Focused().TypedRune(r)
		}
		w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	if c := w.desk.Case.Tests; len(c) != 1 || c[0].Kind != "pressure-hold" || *c[0].EndKPa != 60 || c[0].Stage != cases.BeforeRepair {
		t.Fatalf("tests = %+v", c)
	}
	found := false
	for _, f := range w.desk.Found.Flags {
		found = found || f.ID == "pressure-drop"
	}
	if basis := causesOf(w.desk).Basis; !found || !strings.Contains(basis, "1 test") {
		t.Errorf("flags %+v, basis %q", w.desk.Found.Flags, basis)
	}
	w.checkAgain()
	w.deleteCheck() // of what isn't begun
	if len(w.desk.Case.Tests) != 1 {
		t.Errorf("left: %+v", w.desk.Case.Tests)
	}
	w.undo()
	w.undo()
	if len(w.desk.Case.Tests) != 0 {
		t.Errorf("after two steps back: %+v", w.desk.Case.Tests)
	}
}

// Mixing by volume, as every maker's table has it: of 7 l at 30 %, two sevenths
// make way for concentrate to reach 50 %; a fifth of 5 l at 50 % for water to
// reach 40 %.
func TestToppingUpIsToldInWords(t *testing.T) {
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	say := checkWords(tables, nil)
	for _, tt := range []struct {
		litres, have, want, with float64
		words                    string
	}{
		{7, 30, 50, 100, "Drain 2 l and fill 2 l of concentrate. Then it freezes at -37 °C."},
		{5, 50, 40, 100, "Drain 1 l and fill 1 l of water."},
		{6, 30, 40, 50, "Drain 3 l and fill 3 l of coolant of 50 %."},
		{6, 30, 60, 50, "doesn't bring it from 30 to 60 %"},
		{6, 50, 50, 100, "as strong as wanted"},
	} {
		c := &cases.Case{Loop: cases.Loop{CapacityL: &tt.litres}}
		if got := say.TopUp(c, &cases.Test{VolumePercent: &tt.have}, tt.want, tt.with, units.Metric()); !strings.Contains(got, tt.words) {
			t.Errorf("%+v: %q", tt, got)
		}
	}
	if got := say.TopUp(&cases.Case{}, &cases.Test{}, 50, 100, units.Metric()); got != "Measure the strength first." {
		t.Errorf("nothing measured: %q", got)
	}
}

func TestEveryCheckIsExplained(t *testing.T) {
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	say := checkWords(tables, nil)
	for _, kind := range cases.Words[cases.TestKind]() {
		i := say.Info(kind, false, units.US())
		if i.Title == "" || i.Minutes == "0 min" || i.Text == "" || i.Caution == "" || i.Accepts == "" || i.NotProven == "" || strings.Contains(i.Accepts, "kPa") {
			t.Errorf("%s: %+v", kind, i)
		}
	}
}

// Whoever goes to a check from the tabs is warned as the advice warns: an engine that was too hot is
// run for some (stop at the red zone: M15, published).
func TestFormsMindAnEngineThatWasTooHot(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	const warning = "This engine got too hot"
	told := func(what string, o fyne.CanvasObject, want bool) {
		t.Helper()
		if got := strings.Contains(kittest.Texts(o), warning); got != want {
			t.Errorf("%s warns: %v, want %v", what, got, want)
		}
	}
	all := func(want bool) {
		t.Helper()
		w.goTo(checksTab)
		for kind, runs := range map[cases.TestKind]bool{"combustion-gas": true, "hose-look": true, "level": false, "pressure-hold": false} {
			w.checks.Begin(kind)
			told(string(kind), w.checks.Content(), want && runs)
		}
		w.goTo(warmUpTab)
		told("the warm-up", w.warmup.Content(), want)
	}
	all(false)
	red := diagram.Celsius(118)
	w.desk.Edit("a reading", func(c *cases.Case) { c.Rounds[0].EctC = &red })
	all(true)
	w.begin(likelihood.RaisedIdle, "")
	told("the round that is begun", w.hosemap.Content(), true)
}
