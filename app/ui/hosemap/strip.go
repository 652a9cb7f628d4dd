package hosemap

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// strip lays chips in a row, each as wide as its words; where that is more than the room, none wider than chipMost, and
// what is left goes to those that are cut.
type strip struct{}

// MinSize is what the chips can't do with less than.
func (strip) MinSize(chips []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for i, o := range chips {
		size.Width += min(o.MinSize().Width, chipMost)
		size.Height = max(size.Height, o.MinSize().Height)
		if i > 0 {
			size.Width += theme.Padding()
		}
	}
	return size
}

// Layout shares the room.
func (s strip) Layout(chips []fyne.CanvasObject, room fyne.Size) {
	wanted := float32(0) // beyond what is the least
	for _, o := range chips {
		wanted += max(o.MinSize().Width-chipMost, 0)
	}
	share := float32(0)
	if wanted > 0 {
		share = min(max(room.Width-s.MinSize(chips).Width, 0)/wanted, 1)
	}
	x := float32(0)
	for _, o := range chips {
		w := o.MinSize().Width
		w = min(w, chipMost) + share*max(w-chipMost, 0)
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(w, room.Height))
		x += w + theme.Padding()
	}
}
