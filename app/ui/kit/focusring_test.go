package kit_test

import (
	"testing"

	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Who goes by the keyboard sees where they are on a button of a strong colour too.
func TestTheFocusIsSeenOnAStrongButton(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	strong, plain := kit.NewButton("Start", nil), kit.NewButton("Open", nil)
	strong.Importance = widget.HighImportance
	w := test.NewTempWindow(t, container.NewVBox(strong, plain))
	for _, on := range []*kit.Button{strong, plain, nil} {
		w.Canvas().Unfocus()
		if on != nil {
			w.Canvas().Focus(on)
		}
		for _, b := range []*kit.Button{strong, plain} {
			if got, want := ringOf(b), b == on && b == strong; got != want {
				t.Errorf("%s has a ring: %v, want %v", b.Text, got, want)
			}
		}
	}
}

func ringOf(b *kit.Button) bool {
	for _, o := range test.WidgetRenderer(b).Objects() {
		if r, ok := o.(*canvas.Rectangle); ok && r.Visible() && r.StrokeWidth > 0 && r.StrokeColor == theme.Color(theme.ColorNameForegroundOnPrimary) {
			return true
		}
	}
	return false
}
