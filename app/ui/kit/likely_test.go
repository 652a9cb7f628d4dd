package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// A cause's name is read whole in the narrowest list of causes, however likely it is: "coolant low or air trap…" isn't one.
func TestACausesNameIsWhole(t *testing.T) {
	test.NewTempApp(t)
	const narrowest = 246
	line := kit.NewLikelyLine()
	test.NewTempWindow(t, container.NewWithoutLayout(line))
	line.Resize(fyne.NewSize(narrowest, line.MinSize().Height))
	for _, cause := range cases.Words[cases.Cause]() {
		for _, chance := range []float64{0, 0.54, 1} {
			line.Put(kit.Likely{Name: cause.Name(), Chance: chance})
			for _, o := range test.LaidOutObjects(line) {
				l, ok := o.(*widget.Label)
				if !ok || !l.Visible() {
					continue
				}
				wants := fyne.MeasureText(l.Text, theme.TextSize(), l.TextStyle).Width + 2*theme.InnerPadding()
				if has := l.Size().Width; has < wants {
					t.Errorf("%q has a room of %g, and wants %g", l.Text, has, wants)
				}
			}
		}
	}
}
