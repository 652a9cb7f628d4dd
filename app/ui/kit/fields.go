package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Field is a line of text that tells when it is left with other text than it
// was shown with. Enter leaves it for the next field, Escape takes back what
// was typed.
type Field struct {
	widget.Entry
	onLeft  func(string)
	onFocus func()
	onBlur  func()
	self    fyne.Focusable // the widget that embeds this one, or itself
	shown   string
	focused bool
}

// NewField makes a field; onLeft may be nil.
func NewField(placeholder string, onLeft func(string)) *Field {
	f := &Field{onLeft: onLeft}
	f.PlaceHolder = placeholder
	f.ExtendBaseWidget(f)
	f.setUp(f)
	return f
}

// NewArea makes a field of several lines.
func NewArea(placeholder string, rows int, onLeft func(string)) *Field {
	f := &Field{onLeft: onLeft}
	f.PlaceHolder, f.MultiLine, f.Wrapping = placeholder, true, fyne.TextWrapWord
	f.ExtendBaseWidget(f)
	f.SetMinRowsVisible(rows)
	f.setUp(f)
	return f
}

func (f *Field) setUp(self fyne.Focusable) {
	f.self = self
	if f.MultiLine {
		f.Scroll = fyne.ScrollVerticalOnly
		return
	}
	f.Scroll = fyne.ScrollHorizontalOnly
	f.OnSubmitted = func(string) { f.next() }
}

// Put shows text in the field, unless something is being typed there.
func (f *Field) Put(text string) {
	if f.focused && f.Text != f.shown {
		return // what is being typed is not overwritten
	}
	f.shown = text
	if f.Text != text {
		f.SetText(text)
	}
}

func (f *Field) leave() {
	if f.Text == f.shown {
		return
	}
	f.shown = f.Text
	if f.onLeft != nil {
		f.onLeft(f.Text)
	}
}

func (f *Field) next() {
	f.leave()
	if c := canvasOf(f.self); c != nil {
		c.FocusNext()
	}
}

// Revert takes back what was typed and not yet kept; it reports whether there
// was anything.
func (f *Field) Revert() bool {
	if f.Text == f.shown {
		return false
	}
	f.SetText(f.shown)
	return true
}

// Leave keeps what was typed, as if the field had been left.
func (f *Field) Leave() { f.leave() }

// FocusGained marks the text so that a new number replaces the old.
func (f *Field) FocusGained() {
	f.focused = true
	f.Entry.FocusGained()
	if !f.MultiLine {
		f.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	if f.onFocus != nil {
		f.onFocus()
	}
}

// FocusLost keeps what was typed.
func (f *Field) FocusLost() {
	f.focused = false
	f.Entry.FocusLost()
	if f.onBlur != nil {
		f.onBlur()
	}
	f.leave()
}

// TypedKey adds Escape to what an entry knows.
func (f *Field) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		f.Revert()
		return
	}
	f.Entry.TypedKey(e)
}

// numberField is the field of a drawing's entry: bold, and themed by the scale.
type numberField struct {
	Field
	themed *container.ThemeOverride
}

func newNumberField() *numberField {
	f := &numberField{}
	f.TextStyle.Bold = true
	f.ExtendBaseWidget(f)
	f.setUp(f)
	f.Scroll = fyne.ScrollNone // a number is short; a scroller would cast its shade
	return f
}

func canvasOf(f fyne.Focusable) fyne.Canvas {
	o, ok := f.(fyne.CanvasObject)
	if !ok {
		return nil
	}
	return fyne.CurrentApp().Driver().CanvasForObject(o)
}
