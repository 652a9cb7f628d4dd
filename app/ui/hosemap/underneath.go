package hosemap

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"loopbook/app/ui/kit"
)

// underneath keeps the likeliest causes under what it means. Where they would take more than their share of a low
// window, or the findings wouldn't be read whole over them, the first of them stands for all: the others are one press
// away.
type underneath struct {
	likely *fyne.Container
	last   fyne.CanvasObject // of the findings; nil: none
}

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
	low := foot > likelyShare*room.Height || u.findings(objects[0], room.Width) > room.Height-foot
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

// findings is how high they are in so wide a room. Words that were just put there know it once they were laid out.
func (u *underneath) findings(scrolled fyne.CanvasObject, width float32) float32 {
	if u.last == nil {
		return 0
	}
	content := scrolled.(*container.Scroll).Content
	content.Resize(fyne.NewSize(width, content.MinSize().Height)) // tells the words how wide they are
	content.Resize(fyne.NewSize(width, content.MinSize().Height)) // gives them the height that they need there
	return u.last.Position().Y + u.last.Size().Height + 2*theme.Padding()
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
