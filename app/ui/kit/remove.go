package kit

import "fyne.io/fyne/v2/theme"

// NewRemove makes the button that takes away what stands beside it. What is being typed there is kept first, so that
// undoing brings that back too, and the caret goes: the toolkit leaves it in the field that is gone, which would be kept
// later, in the place of what comes after it.
func NewRemove(do func()) *Button {
	b := NewQuiet("", theme.DeleteIcon(), nil)
	b.OnTapped = func() {
		if c := canvasOf(b); c != nil {
			c.Unfocus()
		}
		do()
	}
	return b
}
