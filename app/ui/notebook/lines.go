package notebook

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// lines lays a row's title over two lines of smaller text. A title that is too long for one line has two: cut at the
// first, every one of a list may read alike. All rows are of one height, and what a short title leaves goes between.
type lines struct{ title *widget.Label }

const (
	rowHeight = 86
	rowMargin = 6 // over the first line's letters, and under the last one's
)

// MinSize is of a fixed height.
func (l lines) MinSize(o []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, line := range o[1:] {
		size.Width = max(size.Width, line.MinSize().Width)
	}
	return fyne.NewSize(size.Width, rowHeight)
}

// Layout shares what the letters leave of the height evenly.
func (l lines) Layout(o []fyne.CanvasObject, room fyne.Size) {
	within := 2 * theme.InnerPadding() // of a label
	bold := fyne.MeasureText(l.title.Text, theme.TextSize(), l.title.TextStyle)
	small := fyne.MeasureText("0", theme.CaptionTextSize(), fyne.TextStyle{}).Height
	rows := float32(1)
	if bold.Width > room.Width-within {
		rows = 2
	}
	gap := (room.Height - 2*rowMargin - rows*bold.Height - 2*small) / 2
	y := float32(rowMargin)
	for i, line := range o {
		height := small
		if i == 0 {
			height = rows * bold.Height
		}
		line.Move(fyne.NewPos(0, y-theme.InnerPadding()))
		line.Resize(fyne.NewSize(room.Width, height+within))
		y += height + gap
	}
}
