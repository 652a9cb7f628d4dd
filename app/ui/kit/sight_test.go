package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
)

// Whatever Tab comes to is seen, forth and back, in a scroll inside a scroll too.
func TestTheFocusIsInSight(t *testing.T) {
	test.NewTempApp(t)
	gap := func() fyne.CanvasObject { return kit.Roomy(fyne.NewSize(10, 170), container.NewStack()) }
	cause := kit.NewChoice([]word{"a"}, func(w word) string { return string(w) }, func(word) {})
	inner := container.NewVScroll(container.NewVBox(gap(), kit.NewButton("Begin", nil), gap(), kit.NewSlider(0, 1), gap(), kit.NewLink("more", nil)))
	outer := container.NewVScroll(container.NewVBox(
		gap(), kit.NewCheck("All", nil), gap(), kit.NewRadio([]string{"one", "two"}, nil), gap(), kit.Labelled("Cause", cause.Select), gap(),
		kit.Roomy(fyne.NewSize(10, 120), inner), gap(), kit.Labelled("Minute", kit.NewField("", nil)),
	))
	w := test.NewTempWindow(t, container.NewBorder(kit.Heading("over it"), nil, nil, nil, outer))
	w.Resize(fyne.NewSize(300, 200))
	for _, way := range []func(){w.Canvas().FocusNext, w.Canvas().FocusPrevious} {
		for range 8 {
			way()
			o := w.Canvas().Focused().(fyne.CanvasObject)
			driver := fyne.CurrentApp().Driver()
			top := driver.AbsolutePositionForObject(o).Y
			if over := driver.AbsolutePositionForObject(outer).Y; top < over || top+o.Size().Height > over+outer.Size().Height {
				t.Errorf("%T has the focus at %g to %g, out of sight", o, top, top+o.Size().Height)
			}
		}
	}
}

type word string

// A list under the screen's edge comes into sight as the other controls do.
func TestAListComesIntoSight(t *testing.T) {
	test.NewTempApp(t)
	list := kit.NewList(func() int { return 2 }, func() fyne.CanvasObject { return kit.Small("") }, func(int, fyne.CanvasObject) {})
	outer := container.NewVScroll(container.NewVBox(kit.Roomy(fyne.NewSize(10, 400), container.NewStack()), list))
	w := test.NewTempWindow(t, outer)
	w.Resize(fyne.NewSize(300, 260))
	if w.Canvas().FocusNext(); outer.Offset.Y < 150 {
		t.Errorf("with the focus on the list the screen is scrolled to %g", outer.Offset.Y)
	}
}
