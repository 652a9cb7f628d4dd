package photos_test

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
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
