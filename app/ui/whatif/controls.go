package whatif

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
)

// slider is one setting with its name and its value over it.
type slider struct {
	bar   *kit.Slider
	value *widget.Label
	at    *float64
	word  func(float64) string
	quiet bool
}

func (s *slider) put() {
	s.quiet = true
	s.bar.SetValue(*s.at)
	s.quiet = false
	s.value.SetText(s.word(*s.at))
}

// slider makes one for a setting. Arrow keys move it by a step.
func (v *View) slider(name string, low, high, step float64, at *float64, word func(float64) string) fyne.CanvasObject {
	s := &slider{bar: kit.NewSlider(low, high), value: kit.Caption(""), at: at, word: word}
	s.bar.Step = step
	s.value.TextStyle.Bold = true
	s.bar.OnChanged = func(to float64) {
		if s.quiet {
			return
		}
		*s.at = to
		s.value.SetText(s.word(to))
		v.OnChange(v.set)
	}
	v.sliders = append(v.sliders, s)
	return container.New(kit.Tight{More: 2}, container.NewBorder(nil, nil, nil, s.value, kit.Small(name)), s.bar)
}

func (v *View) controls() fyne.CanvasObject {
	temp := func(c float64) string { return v.units.TempUnit(diagram.Celsius(c)) }
	share := func(p float64) string { return kit.L("window.whatif.percent", 100*p) }
	v.cause = kit.NewChoice(cases.Words[cases.Cause](), cases.Cause.Name, func(c cases.Cause) {
		v.set.Cause = c
		v.enable()
		v.OnChange(v.set)
	})
	v.cause.Sure()
	return container.NewVBox(
		v.slider(kit.L("window.whatif.outside"), -20, 40, 1, &v.set.AmbientC, temp),
		v.slider(kit.L("window.whatif.rpm"), 700, 4000, 50, &v.set.RPM, func(rpm float64) string { return kit.L("window.whatif.raised", rpm) }),
		container.NewGridWithColumns(2, v.speed(kit.L("window.whatif.idle"), idleRPM), v.speed(kit.L("window.whatif.raised", raisedRPM), raisedRPM)),
		v.slider(kit.L("window.whatif.road"), 0, 130, 5, &v.set.SpeedKmh, func(kmh float64) string { return v.units.Speed(kmh) }),
		v.slider(kit.L("window.whatif.load"), 0.5, 2, 0.05, &v.set.Load, share),
		v.slider(kit.L("window.whatif.blower"), 0, 1, 0.25, &v.set.Blower, share),
		kit.Labelled(kit.L("window.whatif.cause"), v.cause.Select),
		v.slider(kit.L("window.whatif.severity"), 0, 1, 0.05, &v.set.Severity, share),
	)
}

// speed is a button for a usual engine speed.
func (v *View) speed(name string, rpm float64) fyne.CanvasObject {
	return kit.NewButton(name, func() { v.sliders[1].bar.SetValue(rpm) })
}

// enable lets the severity be moved only where there is a fault.
func (v *View) enable() {
	kit.SetEnabled(v.set.Cause != cases.Healthy, v.sliders[len(v.sliders)-1].bar)
}
