package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Field is a line of text that tells when it is left with other text than it
// was shown with. Enter leaves it for the next field, Escape takes back what
// was typed.
//
// What the owner refuses stays in sight with the reason over it, over its
// neighbours' labels too where it is Explained, until it is mended, taken back, or another case is shown.
type Field struct {
	widget.Entry
	// Stay keeps the caret in the field when Enter is pressed.
	Stay bool
	// After is what Enter goes on to; nil, or nothing, is whatever takes the focus
	// next.
	After func() fyne.Focusable
	// OnReverted is told that what was typed is taken back; may be nil.
	OnReverted func()

	label   *widget.Label // over the field; nil where there is none
	title   string        // what the label says while nothing is refused
	refused bool
	told    *Refusals // tells the reason where the label is too narrow; may be nil
	onLeft  func(string)
	onFocus func()
	onBlur  func()
	self    fyne.CanvasObject // the widget that embeds this one, or itself
	shown   string            // as it was put or last left
	kept    string            // as the case has it
	focused bool
	fresh   bool                 // nothing was done in it since it has the focus; the tap that gave it may still come
	area    bool                 // of several lines
	placed  bool                 // the caret stands where somebody set it
	along   fyne.ScrollDirection // how one line is scrolled while it lies in rows
	edge    *canvas.Rectangle    // red while refused; nil: never painted yet
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
	f := &Field{onLeft: onLeft, area: true}
	f.PlaceHolder, f.MultiLine, f.Wrapping = placeholder, true, fyne.TextWrapWord
	f.ExtendBaseWidget(f)
	f.SetMinRowsVisible(rows)
	f.setUp(f)
	return f
}

func (f *Field) setUp(self fyne.CanvasObject) {
	f.self = self
	if f.area {
		f.Scroll = fyne.ScrollVerticalOnly
		return
	}
	f.Scroll = fyne.ScrollHorizontalOnly
	f.OnSubmitted = func(string) { f.next() }
}

// Put shows text in the field, unless something is being typed there.
func (f *Field) Put(text string) {
	if f.refused || (f.focused && f.Text != f.shown) {
		f.kept = text
		return // what is being typed, or was refused, is not overwritten
	}
	f.shown, f.kept = text, text
	if f.Text != text {
		f.replace(text)
	}
}

// replace drops a mark with the text that it was on. The toolkit would keep it, and the second
// letter that is typed then replace the first.
func (f *Field) replace(text string) {
	if f.edge != nil { // painted, so it may be marked
		row, column := f.CursorRow, f.CursorColumn
		f.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
		f.CursorRow, f.CursorColumn = row, column
	}
	if !f.focused {
		f.placed, f.CursorRow, f.CursorColumn = false, 0, 0
	}
	f.SetText(text)
}

// Leave keeps what was typed, as if the field had been left.
func (f *Field) Leave() {
	if f.Text == f.shown {
		return
	}
	f.shown = f.Text
	f.Refuse(nil)
	if f.onLeft != nil {
		f.onLeft(f.Text)
	}
}

// Refuse marks what was typed as not kept, by the field's edge, and with the reason in
// place of the label or over it; nil takes the mark away.
func (f *Field) Refuse(why error) {
	if was := f.refused; was != (why != nil) {
		f.refused = why != nil
		f.showEdge()
		defer f.announce()
	}
	if f.told != nil {
		f.told.tell(f, why)
	}
	if f.label == nil {
		return
	}
	f.label.Importance = widget.LowImportance
	text := f.title
	if why != nil {
		f.label.Importance = widget.DangerImportance
		if f.told == nil {
			text = L("window.kit.not-kept", reason(why))
		}
	}
	f.label.SetText(text)
}

// reason is what an error says last: what to write instead.
func reason(why error) string {
	text := why.Error()
	return text[strings.LastIndex(": "+text, ": "):]
}

// Forget drops what was refused: another case is shown.
func (f *Field) Forget() {
	f.Revert()
}

// Retype lets text be typed in the field once more, and the field be left, if anybody is told of that.
func (f *Field) Retype(text string) {
	if f.onLeft == nil {
		return
	}
	f.replace(text)
	f.shown = f.kept
	f.Leave()
}

// Title names the field in its label.
func (f *Field) Title(text string) {
	f.title = text
	if f.label != nil && !f.refused {
		f.label.SetText(text)
	}
}

// next goes on from the field. Who presses Enter once more than there are fields doesn't mean the button behind them.
func (f *Field) next() {
	f.Leave()
	if f.Stay {
		return
	}
	c := canvasOf(f.self)
	if c == nil {
		return
	}
	f.onward(c)
	if b, ok := c.Focused().(*Button); ok {
		b.led = true
	}
}

func (f *Field) onward(c fyne.Canvas) {
	if f.After != nil {
		if on := f.After(); on != nil {
			Focus(on)
			return
		}
	}
	c.FocusNext()
}

// Revert takes back what was typed and not yet kept; it reports whether there
// was anything.
func (f *Field) Revert() bool {
	if f.Text == f.kept {
		return false
	}
	f.shown = f.kept
	f.replace(f.kept)
	f.Refuse(nil)
	if f.OnReverted != nil {
		f.OnReverted()
	}
	return true
}

// Typed reports whether something was done in the field since it has the focus.
func (f *Field) Typed() bool { return f.focused && !f.fresh }
