package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Button is a dialog's button that Enter presses as a space does, and that hears Escape:
// the toolkit gives a key to what has the focus alone.
type Button struct {
	widget.Button
	escape func()
}

// NewButton makes a button; escape closes its dialog.
func NewButton(words string, do, escape func()) *Button {
	b := &Button{escape: escape}
	b.ExtendBaseWidget(b)
	b.Text, b.OnTapped = words, do
	return b
}

// TypedKey presses, closes, or does what a button does.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		b.escape()
	case fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	default:
		b.Button.TypedKey(e)
	}
}

// Check is a dialog's tick that hears Escape.
type Check struct {
	widget.Check
	escape func()
}

// NewCheck makes a tick; escape closes its dialog.
func NewCheck(words string, escape func()) *Check {
	c := &Check{escape: escape}
	c.ExtendBaseWidget(c)
	c.Text = words
	return c
}

// TypedKey closes, or does what a tick does.
func (c *Check) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		c.escape()
		return
	}
	c.Check.TypedKey(e)
}
