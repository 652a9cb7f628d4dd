package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// Page scrolls by what is seen at once, for Page Up and Page Down, and reports whether the key was one of them: what
// holds the focus, or else the largest that can be scrolled. The toolkit knows only the wheel.
func Page(c fyne.Canvas, e *fyne.KeyEvent) bool {
	way, ok := pageWay(e)
	if !ok {
		return false
	}
	root := c.Content()
	if over := c.Overlays().Top(); over != nil {
		root = over
	}
	focus, _ := c.Focused().(fyne.CanvasObject)
	if s := toPage(root, focus); s != nil {
		s.ScrollToOffset(s.Offset.AddXY(0, way*pageOf(s.Size().Height)))
	}
	return true
}

// pageWay is where the key leads: up is -1.
func pageWay(e *fyne.KeyEvent) (way float32, ok bool) {
	switch e.Name {
	case fyne.KeyPageUp:
		return -1, true
	case fyne.KeyPageDown:
		return 1, true
	}
	return 0, false
}

// pageOf is how far a page leads: a line of it is seen again.
func pageOf(height float32) float32 {
	return max(height/2, height-theme.TextSize()-2*theme.InnerPadding())
}

// toPage is the innermost that holds the focus of what is higher than its room, or else the largest; nil: nothing is.
func toPage(root, focus fyne.CanvasObject) (found *container.Scroll) {
	held := false
	area := func(s *container.Scroll) float32 { return s.Size().Width * s.Size().Height }
	var look func(o fyne.CanvasObject)
	look = func(o fyne.CanvasObject) {
		if s, ok := o.(*container.Scroll); ok && s.Visible() && s.Content != nil && s.Content.Size().Height > s.Size().Height {
			holds := focus != nil && Holds(s, focus)
			if found == nil || holds || !held && area(s) > area(found) {
				found, held = s, held || holds
			}
		}
		for _, inner := range inside(o) {
			look(inner)
		}
	}
	look(root)
	return found
}
