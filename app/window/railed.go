package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// railed lays the rooms beside the rail, the list of cases, which is wider in a wide window: titles are cut there.
type railed struct{}

const (
	railLeast = 232
	railMost  = 320
	railShare = 1.0 / 6
)

// MinSize is that of both beside each other, the rail as narrow as its own parts allow: a desktop's dock takes some 70 of a
// screen that is 1280 wide.
func (railed) MinSize(objects []fyne.CanvasObject) fyne.Size {
	rooms, rail := objects[0].MinSize(), objects[1]
	if !rail.Visible() {
		return rooms
	}
	m := rail.MinSize()
	return fyne.NewSize(m.Width+theme.Padding()+rooms.Width, max(rooms.Height, m.Height))
}

// Layout gives the rail its share.
func (railed) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	rooms, rail := objects[0], objects[1]
	wide := float32(0)
	if rail.Visible() {
		wide = max(railLeast, min(railMost, room.Width*railShare))
		wide = max(rail.MinSize().Width, min(wide, room.Width-theme.Padding()-rooms.MinSize().Width))
	}
	rail.Resize(fyne.NewSize(wide, room.Height))
	if wide > 0 {
		wide += theme.Padding()
	}
	rooms.Move(fyne.NewPos(wide, 0))
	rooms.Resize(fyne.NewSize(room.Width-wide, room.Height))
}
