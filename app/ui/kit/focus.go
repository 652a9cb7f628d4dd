package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Focus puts the focus on what a screen answered, if anything.
func Focus(on fyne.Focusable) {
	if o, ok := on.(fyne.CanvasObject); ok {
		if c := canvasOf(o); c != nil {
			wake(c.Content(), o)
			c.Focus(on)
		}
	}
}

// First is what in root takes the focus first; nil where nothing does.
func First(root fyne.CanvasObject) fyne.Focusable {
	if f, ok := root.(fyne.Focusable); ok && root.Visible() && !disabled(root) {
		return f
	}
	for _, inner := range inside(root) {
		if f := First(inner); f != nil {
			return f
		}
	}
	return nil
}

func disabled(o fyne.CanvasObject) bool {
	d, ok := o.(fyne.Disableable)
	return ok && d.Disabled()
}

// wake gives each widget that holds o in root its renderer: the toolkit looks for the focus in none
// that has none, as before the first painting of a screen and after it was hidden for a minute.
func wake(root, o fyne.CanvasObject) bool {
	if root == o {
		return true
	}
	for _, inner := range inside(root) {
		if wake(inner, o) {
			if s, ok := root.(*container.Scroll); ok {
				s.Refresh() // its least size asks no renderer
			}
			root.MinSize()
			return true
		}
	}
	return false
}

// DropUnseen takes the focus from what went out of sight, which would take what is typed next: the toolkit
// leaves it where it was.
func DropUnseen(c fyne.Canvas) {
	o, ok := c.Focused().(fyne.CanvasObject)
	if ok && c.Overlays().Top() == nil && !Holds(c.Content(), o) {
		c.Unfocus()
	}
}

// Hand gives the focus on to something else where it is in what was just taken out of sight, which
// would take what is typed next.
func Hand(gone fyne.CanvasObject, to fyne.Focusable) {
	o, ok := to.(fyne.CanvasObject)
	if !ok {
		return
	}
	c := canvasOf(o)
	if c == nil {
		return
	}
	if on, ok := c.Focused().(fyne.CanvasObject); ok && Holds(gone, on) {
		Focus(to)
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

// passed gives the window an Escape that the focus has no use for, and scrolls for the page keys; it reports whether
// the key was one of them.
func passed(o fyne.CanvasObject, e *fyne.KeyEvent) bool {
	if e.Name == fyne.KeyEscape {
		leave(o, e)
		return true
	}
	c := canvasOf(o)
	return c != nil && Page(c, e)
}
