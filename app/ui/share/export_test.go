package share

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
)

// find lists the widgets of a kind.
func find[T fyne.CanvasObject](o fyne.CanvasObject) (out []T) {
	if x, ok := o.(T); ok {
		out = append(out, x)
	}
	switch x := o.(type) {
	case *container.Scroll:
		out = append(out, find[T](x.Content)...)
	case *fyne.Container:
		for _, child := range x.Objects {
			out = append(out, find[T](child)...)
		}
	}
	return out
}

func TestEachChoiceMakesThePreviewAnew(t *testing.T) {
	test.NewTempApp(t)
	e := NewExport([]string{"this", "shown", "all", "table"})
	w := test.NewTempWindow(t, e.Content())
	w.Resize(fyne.NewSize(900, 600))
	var wishes []Wish
	e.OnWish = func(w Wish) { wishes = append(wishes, w) }
	find[*kit.Radio](e.Content())[0].SetSelected("all")
	find[*kit.Check](e.Content())[0].SetChecked(true)
	if len(wishes) != 2 || wishes[1] != (Wish{Scope: All, Anonymous: true}) || e.Wish() != wishes[1] {
		t.Errorf("wished %+v", wishes)
	}
	e.Show("Read what stays.", Preview{Goes: []Line{{Where: "customer.name", Was: "Dorian Peckwell"}}, Stays: []Line{{Where: "lesson", Was: "Look for air first."}}})
	text := kittest.Texts(e.preview)
	for _, want := range []string{"Read what stays.", "Dorian Peckwell", "Look for air first."} {
		if !strings.Contains(text, want) {
			t.Errorf("%q can't be read: %s", want, text)
		}
	}
}
