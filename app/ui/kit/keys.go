package kit

import (
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// The toolkit's controls, each of which comes into sight with the focus, and leaves Escape and the page keys to
// its window.

// Button is a button.
type Button struct {
	widget.Button
	Of      fyne.CanvasObject // what comes into sight with it; nil: the button alone
	led     bool              // Enter in the field before led here
	focused bool
}

// NewButton makes a button that a space presses, and Enter too, unless it was what led to it from the field before.
func NewButton(words string, do func()) *Button { return NewButtonWithIcon(words, nil, do) }

// NewButtonWithIcon makes one with an icon before its words.
func NewButtonWithIcon(words string, icon fyne.Resource, do func()) *Button {
	b := &Button{}
	b.ExtendBaseWidget(b)
	b.Text, b.Icon, b.OnTapped = words, icon, do
	return b
}

// FocusGained brings the button into sight, or what it is of.
func (b *Button) FocusGained() {
	b.focused = true
	b.Button.FocusGained()
	if b.Of != nil {
		InSight(b.Of)
		return
	}
	InSight(b)
}

// FocusLost takes the ring away.
func (b *Button) FocusLost() {
	b.focused, b.led = false, false
	b.Button.FocusLost()
}

// TypedKey presses, or leaves the key to the window.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	if passed(b, e) {
		return
	}
	if !b.led {
		e = orSpace(e)
	}
	b.Button.TypedKey(e)
}

// Check is a tick.
type Check struct {
	widget.Check
	round bool // one of those that exclude each other
}

// NewCheck makes a tick; changed may be nil.
func NewCheck(words string, changed func(bool)) *Check {
	c := &Check{}
	c.ExtendBaseWidget(c)
	c.Text, c.OnChanged = words, changed
	return c
}

// CreateRenderer paints the tick.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	r := c.Check.CreateRenderer()
	if c.round {
		return newRound(r, &c.Check)
	}
	return r
}

// FocusGained brings the tick into sight.
func (c *Check) FocusGained() {
	c.Check.FocusGained()
	InSight(c)
}

// TypedKey leaves Escape to the window.
func (c *Check) TypedKey(e *fyne.KeyEvent) {
	if !passed(c, e) {
		c.Check.TypedKey(e)
	}
}

// Select is a list to choose from.
type Select struct {
	widget.Select
	focused bool
}

// NewSelect makes a list; changed may be nil.
func NewSelect(options []string, changed func(string)) *Select {
	s := &Select{}
	s.ExtendBaseWidget(s)
	s.Options, s.OnChanged = options, changed
	return s
}

// FocusGained brings the list into sight.
func (s *Select) FocusGained() {
	s.focused = true
	s.Select.FocusGained()
	InSight(s)
}

// FocusLost makes the edge a quiet one again.
func (s *Select) FocusLost() {
	s.focused = false
	s.Select.FocusLost()
}

// Tapped opens the list.
func (s *Select) Tapped(e *fyne.PointEvent) {
	s.Select.Tapped(e)
	s.markChosen()
}

// TypedKey leaves Escape to the window.
func (s *Select) TypedKey(e *fyne.KeyEvent) {
	if !passed(s, e) {
		s.Select.TypedKey(e)
		s.markChosen()
	}
}

// TypedRune chooses the next entry that begins with a letter, from the first again after the last, as lists do elsewhere.
func (s *Select) TypedRune(r rune) {
	if s.Disabled() || !unicode.IsLetter(r) {
		return
	}
	n, from := len(s.Options), s.SelectedIndex()
	for i := 1; i <= n; i++ {
		at := (from + i) % n
		if first, _ := utf8.DecodeRuneInString(s.Options[at]); unicode.ToLower(first) == unicode.ToLower(r) {
			s.SetSelectedIndex(at)
			return
		}
	}
}

// markChosen marks what is chosen in the list that opened, so that the arrows go on from there:
// the toolkit begins at the list's end or beginning.
func (s *Select) markChosen() {
	c := canvasOf(s)
	if c == nil {
		return
	}
	if list, open := c.Focused().(*widget.PopUpMenu); open {
		for range s.SelectedIndex() + 1 {
			list.ActivateNext()
		}
	}
}

// Link is words that lead somewhere.
type Link struct{ widget.Hyperlink }

// NewLink makes small words that do something.
func NewLink(words string, do func()) *Link {
	l := &Link{}
	l.ExtendBaseWidget(l)
	l.Text, l.OnTapped, l.SizeName = words, do, theme.SizeNameCaptionText
	return l
}

// FocusGained brings the words into sight.
func (l *Link) FocusGained() {
	l.Hyperlink.FocusGained()
	InSight(l)
}

// TypedKey leaves Escape to the window, and follows the words by Enter too.
func (l *Link) TypedKey(e *fyne.KeyEvent) {
	if !passed(l, e) {
		l.Hyperlink.TypedKey(orSpace(e))
	}
}

// orSpace is a space for Enter: the toolkit's own widgets know that alone.
func orSpace(e *fyne.KeyEvent) *fyne.KeyEvent {
	if e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter {
		return &fyne.KeyEvent{Name: fyne.KeySpace}
	}
	return e
}

// List is lines to go along with the arrows.
type List struct {
	widget.List
	own *container.Scroll // nil: never painted yet
}

// NewList makes a list; its lines are made by line and filled by fill.
func NewList(length func() int, line func() fyne.CanvasObject, fill func(widget.ListItemID, fyne.CanvasObject)) *List {
	l := &List{}
	l.ExtendBaseWidget(l)
	l.Length, l.CreateItem, l.UpdateItem = length, line, fill
	return l
}

// FocusGained brings the list into sight.
func (l *List) FocusGained() {
	l.List.FocusGained()
	InSight(l)
}

// CreateRenderer lays what passes the wheel on over the lines.
func (l *List) CreateRenderer() fyne.WidgetRenderer {
	r := l.List.CreateRenderer()
	l.own = scrollOf(r)
	return &laidOver{r, []fyne.CanvasObject{newWheel(func() fyne.CanvasObject { return l }, l.own)}}
}

// TypedKey leaves Escape to the window, pages where there are more lines than are seen, and chooses by Enter too.
func (l *List) TypedKey(e *fyne.KeyEvent) {
	way, page := pageWay(e)
	switch {
	case page && l.own != nil && l.own.Content.Size().Height > l.Size().Height:
		l.ScrollToOffset(l.GetScrollOffset() + way*pageOf(l.Size().Height))
	case !passed(l, e):
		l.List.TypedKey(orSpace(e))
	}
}
