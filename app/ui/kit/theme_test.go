package kit_test

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram/drawing"
)

// A menu's keys must be read too: WCAG 2.1, success criterion 1.4.3, at least
// 4.5 : 1, by what is painted.
func TestAMenusKeysCanBeRead(t *testing.T) {
	a := test.NewTempApp(t)
	for light, p := range map[kit.Light]drawing.Palette{kit.Bright: drawing.Light(), kit.Dim: drawing.Dark()} {
		a.Settings().SetTheme(kit.NewTheme(light))
		item := fyne.NewMenuItem("", nil) // nothing but its keys is painted
		item.Shortcut = &desktop.CustomShortcut{KeyName: fyne.KeyN, Modifier: fyne.KeyModifierControl}
		w := test.NewTempWindow(t, widget.NewMenu(fyne.NewMenu("", item)))
		picture, ground, best := w.Canvas().Capture(), lit(p[drawing.Card]), 0.0
		for y := range picture.Bounds().Dy() {
			for x := range picture.Bounds().Dx() {
				ink := lit(picture.At(x, y))
				best = max(best, (max(ink, ground)+0.05)/(min(ink, ground)+0.05))
			}
		}
		if !(best >= 4.5) {
			t.Errorf("%s: a menu's keys have a contrast of %.2f", light, best)
		}
	}
}

func lit(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return luminance(float64(n.R), float64(n.G), float64(n.B))
}
