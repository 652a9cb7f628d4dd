package kit_test

import (
	"image"
	"reflect"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// A hose's number looks as it did after a minute out of sight, behind another page or while cases of other loops
// were looked at.
func TestANumberLooksTheSameAfterAMinuteOutOfSight(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	v := kit.NewLoopView()
	w := test.NewTempWindow(t, v)
	w.Resize(fyne.NewSize(1300, 900))
	look := func(layout string) image.Image {
		l, err := diagram.LoopByID(layout)
		if err != nil {
			t.Fatal(err)
		}
		p := drawing.Draw(l, drawing.State{}, false)
		texts := map[diagram.Point]kit.Typed{}
		for _, e := range p.Entries {
			texts[e.Point] = kit.Typed{Rest: "88.5"}
		}
		v.Draw(p, texts)
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
