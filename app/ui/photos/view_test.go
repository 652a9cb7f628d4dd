package photos_test

import (
	"image"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/photos"
	"loopbook/cases"
	"loopbook/diagram"
)

func each(o fyne.CanvasObject, do func(fyne.CanvasObject)) {
	do(o)
	switch o := o.(type) {
	case *kit.Field, *kit.Select, *kit.Button:
	case *fyne.Container:
		for _, inner := range o.Objects {
			each(inner, do)
		}
	case fyne.Widget:
		for _, inner := range test.WidgetRenderer(o).Objects() {
			each(inner, do)
		}
	}
}

func TestACaptionAndAPointAreKept(t *testing.T) {
	test.NewTempApp(t)
	c := cases.Case{ID: "a", Photos: []cases.Photo{{File: "photos/1.jpg"}, {File: "photos/2.jpg", Caption: "the cap"}}}
	var v *photos.View
	picture := image.NewRGBA(image.Rect(0, 0, 4, 4))
	show := func() {
		v.Show(photos.Data{Case: c, Points: []diagram.Point{diagram.RadIn, diagram.RadOut}, Photos: []photos.Photo{{Image: picture}, {Problem: "gone"}}})
	}
	v = photos.New(func(_ string, change func(*cases.Case)) { change(&c); show() })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	show()
	var captions []*kit.Field
	var points []*kit.Select
	shown, problem := 0, false
	each(v.Content(), func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *kit.Field:
			captions = append(captions, o)
		case *kit.Select:
			points = append(points, o)
		case *canvas.Image:
			if o.Image == picture {
				shown++
			}
		case *widget.Label:
			problem = problem || o.Text == "gone"
		}
	})
	if len(captions) != 2 || len(points) != 2 || captions[1].Text != "the cap" || shown != 1 || !problem {
		t.Fatalf("%d captions, %d points, %d pictures, a problem: %v", len(captions), len(points), shown, problem)
	}
	captions[0].SetText("sucked flat at 2500 rpm")
	captions[0].Leave()
	points[0].SetSelectedIndex(2)
	if p := c.Photos[0]; p.Caption != "sucked flat at 2500 rpm" || p.Point != diagram.RadOut {
		t.Errorf("kept %+v", p)
	}
}

// A caption that is being typed goes with its picture, comes back with it, and gets under no other one.
func TestAPictureGoesWithWhatIsBeingTypedOfIt(t *testing.T) {
	test.NewTempApp(t)
	c := cases.Case{ID: "a", Photos: []cases.Photo{{File: "photos/1.jpg"}, {File: "photos/2.jpg"}}}
	var v *photos.View
	var before []cases.Case
	v = photos.New(func(_ string, change func(*cases.Case)) {
		k := c
		k.Photos = slices.Clone(c.Photos)
		before = append(before, c)
		change(&k)
		c = k
		v.Show(photos.Data{Case: c})
	})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	v.Show(photos.Data{Case: c})
	for want := len(c.Photos) - 1; want >= 0; want-- {
		var remove *kit.Button // of the last picture
		each(v.Content(), func(o fyne.CanvasObject) {
			if b, ok := o.(*kit.Button); ok && b.Icon != nil && b.Icon.Name() == theme.DeleteIcon().Name() {
				remove = b
			}
		})
		caption := v.Caption(want).(*kit.Field)
		kit.Focus(caption)
		caption.SetText("torn at its foot")
		remove.Tapped(&fyne.PointEvent{}) // as the desktop does it: the focus stays where it is
		w.Canvas().Unfocus()              // somebody goes on to another field
		if len(c.Photos) != want || want > 0 && c.Photos[0].Caption != "" {
			t.Fatalf("removed, the pictures are %+v", c.Photos)
		}
		if back := before[len(before)-1].Photos; back[want].Caption != "torn at its foot" {
			t.Errorf("undone, they are %+v", back)
		}
	}
}
