package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Holder is a widget of the kit with others in it.
type Holder interface{ Inside() []fyne.CanvasObject }

// InSight scrolls whatever holds o no further than it must for o to be seen with the label
// over it.
func InSight(o fyne.CanvasObject) {
	c := canvasOf(o)
	if c == nil {
		return
	}
	if _, ok := bring(c.Content(), o); ok {
		return
	}
	for _, over := range c.Overlays().List() {
		bring(over, o)
	}
}

// bring scrolls what lies between root and o, the innermost first. It answers how far under
// root's top o begins then; false where root doesn't hold it.
func bring(root, o fyne.CanvasObject) (top float32, ok bool) {
	if root == o {
		return 0, true
	}
	for _, inner := range inside(root) {
		top, ok := bring(inner, o)
		if !ok {
			continue
		}
		if s, is := root.(*container.Scroll); is {
			show(s, top, o.Size().Height)
		}
		return inner.Position().Y + top, true
	}
	return 0, false
}

// inside is what an object that is seen holds.
func inside(o fyne.CanvasObject) []fyne.CanvasObject {
	if o == nil || !o.Visible() {
		return nil
	}
	return parts(o)
}

// parts are what o holds, hidden or not.
func parts(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case *container.Scroll:
		return []fyne.CanvasObject{o.Content}
	case *container.AppTabs:
		return []fyne.CanvasObject{o.Selected().Content}
	case *widget.PopUp:
		return []fyne.CanvasObject{o.Content}
	case Holder:
		return o.Inside()
	}
	return nil
}

// within is where o lies in root; false where it doesn't.
func within(root, o fyne.CanvasObject) (fyne.Position, bool) {
	if root == o {
		return fyne.Position{}, true
	}
	for _, inner := range inside(root) {
		if at, ok := within(inner, o); ok {
			return at.Add(inner.Position()), true
		}
	}
	return fyne.Position{}, false
}

// show scrolls to what begins at top of the content.
func show(s *container.Scroll, top, height float32) {
	about := theme.TextSize() + 2*theme.InnerPadding() // a label's line
	to := s.Offset
	switch above, below := max(0, top-about), top+height+about-s.Size().Height; {
	case above < to.Y:
		to.Y = above
	case below > to.Y:
		to.Y = min(below, above)
	default:
		return
	}
	s.ScrollToOffset(to)
}

// Holds reports whether o is seen in root.
func Holds(root, o fyne.CanvasObject) bool {
	_, in := within(root, o)
	return in
}
