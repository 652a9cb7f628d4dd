package words

import (
	"strings"
	"testing"

	"loopbook/app/ui/checks"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Mixing by volume, as every maker's table has it: of 7 l at 30 %, two sevenths
// make way for concentrate to reach 50 %; a fifth of 5 l at 50 % for water to
// reach 40 %.
func TestToppingUpIsToldInWords(t *testing.T) {
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	say := Checks(tables)
	for _, tt := range []struct {
		litres, have, want, with float64
		words                    string
	}{
		{7, 30, 50, 100, "Drain 2 L and fill 2 L of concentrate. Then it freezes at -37 °C."},
		{5, 50, 40, 100, "Drain 1 L and fill 1 L of water."},
		{6, 30, 40, 50, "Drain 3 L and fill 3 L of coolant of 50 %."},
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
	say := Checks(tables)
	for _, kind := range cases.Words[cases.TestKind]() {
		i := say.Info(kind, "", checks.Found{}, units.US())
		if i.Title == "" || i.Minutes == "0 min" || i.Text == "" || i.Caution == "" || i.Accepts == "" || i.NotProven == "" || strings.Contains(i.Accepts, "kPa") {
			t.Errorf("%s: %+v", kind, i)
		}
	}
}

// A check that runs the engine tells, as where it is advised, that the coolant was low; one that doesn't has nothing to mind.
func TestALowLevelIsToldBeforeTheEngineRuns(t *testing.T) {
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	told := Checks(tables)
	low := say.English().Of("check.low")
	for kind, want := range map[cases.TestKind]bool{cases.HoseTest: true, cases.BubblesTest: true, cases.CapTest: false, cases.LevelTest: false} {
		caution := told.Info(kind, "", checks.Found{Low: true}, units.Metric()).Caution
		if got := strings.HasPrefix(caution, low); got != want {
			t.Errorf("%s: %q", kind, caution)
		}
	}
}
