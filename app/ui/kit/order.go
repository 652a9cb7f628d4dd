package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
)

// Framed is the toolkit's border, but Tab goes through it as it is read: the top, the left, the
// middle, the right, the bottom. The toolkit's own begins with the middle. Any but the middle may
// be nil.
//
// It isn't for a top or a side that grows by itself: the toolkit's painter then forgets to lay out what
// holds it, unless it comes last.
func Framed(top, bottom, left, right, middle fyne.CanvasObject) *fyne.Container {
	var all []fyne.CanvasObject
	for _, o := range []fyne.CanvasObject{top, left, middle, right, bottom} {
		if o != nil {
			all = append(all, o)
		}
	}
	return container.New(layout.NewBorderLayout(top, bottom, left, right), all...)
}
