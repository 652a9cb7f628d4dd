package hosemap

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"loopbook/app/ui/kit"
)

// underneath keeps the likeliest causes under what it means. Where they would take more than their share of a low
// window, the first of them stands for all: what it means is read there, and the others are one press away.
type underneath struct{ likely *fyne.Container }

const (
	likelyShare = 0.45
	meansLeast  = 60 // a line or two
)

// MinSize leaves a little of what it means in sight over the first cause.
func (u *underneath) MinSize(objects []fyne.CanvasObject) fyne.Size {
	_, short := u.foot(objects[1])
	return fyne.NewSize(max(objects[0].MinSize().Width, objects[1].MinSize().Width), meansLeast+short)
}

// Layout gives what it means the room that the causes leave.
func (u *underneath) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	foot, short := u.foot(objects[1])
	low := foot > likelyShare*room.Height
	if low {
		foot = short
	}
	for _, line := range u.others() {
		if line.Visible() == low {
			kit.SetVisible(!low, line)
		}
	}
	objects[0].Move(fyne.Position{})
	objects[0].Resize(fyne.NewSize(room.Width, room.Height-foot))
	objects[1].Move(fyne.NewPos(0, room.Height-foot))
	objects[1].Resize(fyne.NewSize(room.Width, foot))
}

// foot is how high the causes are, all of them and with the first alone.
func (u *underneath) foot(padded fyne.CanvasObject) (all, short float32) {
	if len(u.likely.Objects) == 0 {
		return 0, 0
	}
	for _, line := range u.others() {
		h := line.MinSize().Height + theme.Padding()
		all += h
		if line.Visible() {
			short -= h
		}
	}
	now := padded.MinSize().Height
	return now + all + short, now + short
}

// others are the causes after the first.
func (u *underneath) others() []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, o := range u.likely.Objects {
		if line, ok := o.(*kit.LikelyLine); ok {
			out = append(out, line)
		}
	}
	if len(out) > 0 {
		out = out[1:]
	}
	return out
}
