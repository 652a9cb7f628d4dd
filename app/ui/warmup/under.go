package warmup

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// under gives a chart the room, but for what its words below ask for once they are so wide.
type under struct{}

// MinSize is that of both.
func (under) MinSize(o []fyne.CanvasObject) fyne.Size {
	size := o[0].MinSize()
	if words := o[1]; words.Visible() {
		m := words.MinSize()
		size = fyne.NewSize(max(size.Width, m.Width), size.Height+m.Height)
	}
	return size
}

// Layout puts the words at the bottom.
func (under) Layout(o []fyne.CanvasObject, room fyne.Size) {
	chart, words, below := o[0], o[1], float32(0)
	if words.Visible() {
		words.Resize(fyne.NewSize(room.Width, words.Size().Height)) // so that they know their lines
		below = words.MinSize().Height
		words.Move(fyne.NewPos(0, room.Height-below))
		words.Resize(fyne.NewSize(room.Width, below))
	}
	chart.Move(fyne.Position{})
	chart.Resize(fyne.NewSize(room.Width, room.Height-below))
}

// factColumns is into how many columns the facts are laid: the longest has room where a window is small.
const factColumns = 4

// cells are facts over their values, beside each other as they are read.
func cells(facts []Fact) []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, len(facts))
	for i, f := range facts {
		value := widget.NewLabel(f.Value)
		value.TextStyle.Bold, value.Truncation = true, fyne.TextTruncateEllipsis
		out[i] = container.New(kit.Tight{More: 4}, kit.Small(f.What), value)
	}
	return out
}
