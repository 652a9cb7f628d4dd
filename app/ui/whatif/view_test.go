package whatif

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

func shown(t *testing.T) (v *View, heard *[]Settings) {
	t.Helper()
	test.NewTempApp(t)
	v, heard = New(), &[]Settings{}
	v.OnChange = func(s Settings) { *heard = append(*heard, s) }
	v.OnPause, v.OnCold, v.OnWarm, v.OnCase = func(bool) {}, func() {}, func() {}, func() {}
	test.NewTempWindow(t, v.Content()).Resize(fyne.NewSize(1048, 680))
	return v, heard
}

func TestPuttingSettingsTellsNothing(t *testing.T) {
	v, heard := shown(t)
	s := Idle()
	s.AmbientC, s.Cause, s.SpeedKmh = -8, "pump-weak", 90
	v.Put(s, cases.Words[cases.Cause](), units.US())
	if len(*heard) > 0 {
		t.Fatalf("putting told %+v", *heard)
	}
	if got := v.sliders[0].value.Text; got != "18 °F" { // −8 × 9/5 + 32, whole
		t.Errorf("outside air reads %q", got)
	}
}

func TestASliderMovesByKeys(t *testing.T) {
	v, heard := shown(t)
	v.First().TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	if n := len(*heard); n != 1 || (*heard)[0].AmbientC != 21 {
		t.Errorf("one step to the right told %+v, want 21 °C", *heard)
	}
}

func TestOnlyAFaultHasASeverity(t *testing.T) {
	v, heard := shown(t)
	severity := v.sliders[len(v.sliders)-1].bar
	if !severity.Disabled() {
		t.Error("a healthy loop has a severity")
	}
	v.cause.SetSelected(cases.Cause("pump-weak").Name())
	if severity.Disabled() || (*heard)[0].Cause != "pump-weak" {
		t.Errorf("with a fault chosen: disabled %t, told %+v", severity.Disabled(), *heard)
	}
	v.cause.SetSelected(cases.Healthy.Name())
	if got := (*heard)[len(*heard)-1].Cause; got != cases.Healthy || !severity.Disabled() {
		t.Errorf("with a sound loop chosen the cause is %q", got)
	}
	if slices.Contains(v.cause.Options, kit.Unknown()) {
		t.Error("a car of no known state can be chosen")
	}
}

func TestFactsAndBoilingAreTold(t *testing.T) {
	v, _ := shown(t)
	v.Show(Shown{Facts: []Fact{{"Fan", "off"}, {"Sensor", "90 °C"}}})
	v.Show(Shown{Facts: []Fact{{"Fan", "on"}, {"Sensor", "124 °C"}}, Boils: true})
	pair := v.facts.Objects[0].(*fyne.Container).Objects
	if got := pair[1].(*widget.Label).Text; got != "on" || !v.boils.Visible() {
		t.Errorf("the fan is %q, boiling told %t; want on and true", got, v.boils.Visible())
	}
	v.Show(Shown{})
	if v.boils.Visible() {
		t.Error("boiling is told of a loop that doesn't")
	}
}

// A cause that the loop has no part for isn't offered, nor that it isn't known which it is.
func TestOnlyCausesOfTheLoopAreOffered(t *testing.T) {
	test.NewTempApp(t)
	v := New()
	v.Put(Idle(), []cases.Cause{cases.Healthy, "pump-weak"}, units.Metric())
	if want := []string{cases.Healthy.Name(), cases.Cause("pump-weak").Name()}; !slices.Equal(v.cause.Options, want) || v.cause.Selected != want[0] {
		t.Errorf("%q of %q is chosen, want the first of %q", v.cause.Selected, v.cause.Options, want)
	}
}
