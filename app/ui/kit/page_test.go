package kit_test

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// The page keys scroll what holds the focus, or else the largest that is longer than its room; the toolkit knows them
// nowhere but in a text.
func TestThePageKeysScroll(t *testing.T) {
	test.NewTempApp(t)
	high := func(with ...fyne.CanvasObject) *container.Scroll {
		r := canvas.NewRectangle(color.Black)
		r.SetMinSize(fyne.NewSize(20, 2000))
		return container.NewVScroll(container.NewVBox(append(with, r)...))
	}
	button, field, link := kit.NewButton("Take", nil), kit.NewField("", nil), kit.NewLink("2 cases", nil)
	small, large := high(button), high(link)
	short := container.NewVScroll(container.NewVBox(field))
	list := kit.NewList(func() int { return 100 }, func() fyne.CanvasObject { return widget.NewLabel("") }, func(widget.ListItemID, fyne.CanvasObject) {})
	w := test.NewTempWindow(t, container.New(kit.Shares{150, 250, 300, 100}, small, large, short, list))
	w.Resize(fyne.NewSize(800, 400))
	press := func(on fyne.Focusable, key fyne.KeyName) {
		t.Helper()
		if on == nil {
			w.Canvas().Unfocus()
			if !kit.Page(w.Canvas(), &fyne.KeyEvent{Name: key}) {
				t.Errorf("%s is no page key", key)
			}
			return
		}
		w.Canvas().Focus(on)
		on.TypedKey(&fyne.KeyEvent{Name: key})
	}
	for _, tt := range []struct {
		what         string
		on           fyne.Focusable
		small, large bool
	}{
		{"nothing", nil, false, true}, {"what is short", field, false, true}, {"the small one", button, true, false}, {"the large one", link, false, true},
	} {
		press(tt.on, fyne.KeyPageDown)
		if (small.Offset.Y > 200) != tt.small || (large.Offset.Y > 200) != tt.large {
			t.Errorf("with the focus in %s they are at %g and %g", tt.what, small.Offset.Y, large.Offset.Y)
		}
		press(tt.on, fyne.KeyPageUp)
		if small.Offset.Y != 0 || large.Offset.Y != 0 {
			t.Errorf("with the focus in %s, back, they are at %g and %g", tt.what, small.Offset.Y, large.Offset.Y)
		}
	}
	press(list, fyne.KeyPageDown)
	if list.GetScrollOffset() < 200 || large.Offset.Y != 0 {
		t.Errorf("the list is at %g", list.GetScrollOffset())
	}
	if kit.Page(w.Canvas(), &fyne.KeyEvent{Name: fyne.KeyDown}) {
		t.Error("an arrow is taken for a page key")
	}
}
