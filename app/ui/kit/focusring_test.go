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

// A list to choose from has a field's edge, and shows the focus as a field does.
func TestAListHasAFieldsEdge(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	list := kit.NewSelect([]string{"on", "off"}, nil)
	w := test.NewTempWindow(t, list)
	edge := func() *canvas.Rectangle {
		objects := test.WidgetRenderer(list).Objects()
		return objects[len(objects)-1].(*canvas.Rectangle)
	}
	if edge().Hidden || edge().StrokeColor != theme.Color(theme.ColorNameInputBorder) {
		t.Errorf("its edge is %v, hidden: %v", edge().StrokeColor, edge().Hidden)
	}
	w.Canvas().Focus(list)
	ground := test.WidgetRenderer(list).Objects()[0].(*canvas.Rectangle)
	if edge().StrokeColor != theme.Color(theme.ColorNamePrimary) || ground.FillColor != theme.Color(theme.ColorNameInputBackground) {
		t.Errorf("with the focus its edge is %v, its ground %v", edge().StrokeColor, ground.FillColor)
	}
	list.Disable()
	if !edge().Hidden {
		t.Error("one that can't be used looks like one that can")
	}
}
