package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Tight stacks objects from the top with the text padding between them taken
// out, so that a label stands close to what it names. The last takes the rest
// of the height.
type Tight struct {
	More float32 // how much closer than the padding
}

func (t Tight) overlap() float32 { return theme.InnerPadding() + t.More }

// MinSize is as wide as the widest and as high as all, less the padding.
func (t Tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for i, o := range visible(objects) {
		m := o.MinSize()
		size.Width = fyne.Max(size.Width, m.Width)
		size.Height += m.Height
		if i > 0 {
			size.Height -= t.overlap()
		}
	}
	return size
}

// Layout stacks the objects.
func (t Tight) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	y := float32(0)
	list := visible(objects)
	for i, o := range list {
		h := o.MinSize().Height
		if i == len(list)-1 {
			h = room.Height - y
		}
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(room.Width, h))
		y += h - t.overlap()
	}
}

func visible(objects []fyne.CanvasObject) []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, 0, len(objects))
	for _, o := range objects {
		if o.Visible() {
			out = append(out, o)
		}
	}
	return out
}

// Shares lays objects beside each other, each with its share of the width.
type Shares []float32

// MinSize is the widths and the greatest height.
func (s Shares) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for i, o := range objects {
		size.Width += s[i]
		size.Height = fyne.Max(size.Height, o.MinSize().Height)
	}
	return size.Add(fyne.NewSize(float32(len(objects)-1)*gap, 0))
}

const gap = 4

// Layout gives each object its share.
func (s Shares) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	sum := float32(0)
	for _, share := range s {
		sum += share
	}
	x, free := float32(0), room.Width-gap*float32(len(objects)-1)
	for i, o := range objects {
		w := free * s[i] / sum
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(w, room.Height))
		x += w + gap
	}
}

// Wide makes an object at least that wide.
func Wide(width float32, o fyne.CanvasObject) fyne.CanvasObject {
	return Roomy(fyne.NewSize(width, 0), o)
}

// Roomy makes an object at least that large.
func Roomy(least fyne.Size, o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(atLeast(least), o)
}

type atLeast fyne.Size

// MinSize is the object's or the least, whichever is larger.
func (m atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.Size(m))
}

// Layout fills the room.
func (m atLeast) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(room)
}
