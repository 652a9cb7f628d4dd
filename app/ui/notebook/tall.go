package notebook

import "fyne.io/fyne/v2"

// tall is a layout that gives what lies in it the height that of answers.
type tall struct{ of func() float32 }

// MinSize is as wide as the widest.
func (t tall) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.NewSize(0, t.of())
	for _, o := range objects {
		size.Width = fyne.Max(size.Width, o.MinSize().Width)
	}
	return size
}

// Layout gives all of the room to each.
func (t tall) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(0, 0))
		o.Resize(room)
	}
}
