package kit

import "fyne.io/fyne/v2"

// Focus puts the focus on what a screen answered, if anything.
func Focus(on fyne.Focusable) {
	if o, ok := on.(fyne.CanvasObject); ok {
		if c := canvasOf(o); c != nil {
			c.Focus(on)
		}
	}
}

// canvasOf is the canvas that holds o. What was never painted doesn't know its own: it is
// looked for in the windows.
func canvasOf(o fyne.CanvasObject) fyne.Canvas {
	driver := fyne.CurrentApp().Driver()
	if c := driver.CanvasForObject(o); c != nil {
		return c
	}
	for _, w := range driver.AllWindows() {
		if _, in := within(w.Canvas().Content(), o); in {
			return w.Canvas()
		}
	}
	return nil
}

// leave gives the window a key that has no use where the focus is: the toolkit gives it to what
// has the focus alone.
func leave(o fyne.CanvasObject, e *fyne.KeyEvent) {
	if c := canvasOf(o); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(e)
	}
}

// escaped gives the window an Escape that the focus has no use for, and reports whether the key was one.
func escaped(o fyne.CanvasObject, e *fyne.KeyEvent) bool {
	if e.Name != fyne.KeyEscape {
		return false
	}
	leave(o, e)
	return true
}
