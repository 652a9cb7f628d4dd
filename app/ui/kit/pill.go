package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram/drawing"
)

// Pill is a short text on a round ground of its own.
func Pill(text string) fyne.CanvasObject {
	l := widget.NewLabel(text)
	l.SizeName, l.TextStyle.Bold = theme.SizeNameCaptionText, true
	return container.NewStack(container.NewPadded(NewGround(drawing.Chosen, "", 10)), l)
}
