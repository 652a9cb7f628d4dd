package kit_test

import (
	"image"
	"reflect"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
)

// A hose's number looks as it did after a minute out of sight, behind another page or while cases of other loops
// were looked at.
func TestANumberLooksTheSameAfterAMinuteOutOfSight(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	v := kit.NewLoopView()
	w := test.NewTempWindow(t, v)
	w.Resize(fyne.NewSize(1300, 900))
	look := func(layout string) image.Image {
		drawWith(t, v, layout, "88.5")
		return w.Canvas().Capture()
	}
	const cooler, other = "outlet-thermostat-oil-cooler", "inlet-thermostat"
	before := look(cooler)
	forgetRenderers(t, v)
	if !reflect.DeepEqual(before, look(cooler)) {
		t.Error("behind another page it changed")
	}
	var away []fyne.CanvasObject
	for _, p := range []diagram.Point{diagram.OilIn, diagram.OilOut} {
		away = append(away, v.Field(p).(fyne.CanvasObject))
	}
	look(other)
	for _, f := range away {
		forgetRenderers(t, f)
	}
	look(other)
	if !reflect.DeepEqual(before, look(cooler)) {
		t.Error("after another loop it changed")
	}
}
