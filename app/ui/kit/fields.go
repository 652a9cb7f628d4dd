package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
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

// AcceptsTab reports false: Tab goes to the next field, in several lines too.
func (f *Field) AcceptsTab() bool { return false }

// FocusGained brings the field into sight and marks the text so that a new number replaces the old. The window's
// own focus may come again in the middle of a number: that isn't marked.
func (f *Field) FocusGained() {
	if f.focused && f.Text != f.shown {
		f.Entry.FocusGained()
		return
	}
	f.focused = true
	f.Entry.FocusGained()
	if f.area && !f.placed {
		f.toEnd() // there it is written on; the toolkit begins before the first letter
	}
	f.placed = true
	f.Mark()
	if f.onFocus != nil {
		f.onFocus()
	}
	if f.told != nil {
		f.told.entered(f)
	}
	InSight(f.self)
}

// Mark lets what is typed next replace all that stands in a line, as where it was only just entered.
func (f *Field) Mark() {
	f.fresh = true
	if !f.area {
		f.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
}

// MouseDown sets the caret where it is pressed, and nowhere before: the text would be scrolled away under the pointer.
func (f *Field) MouseDown(e *desktop.MouseEvent) {
	f.placed = true
	f.Entry.MouseDown(e)
}

// Tapped marks all that stands in a line as it is entered, so that typing
// replaces it; a second tap sets the caret.
func (f *Field) Tapped(e *fyne.PointEvent) {
	f.Entry.Tapped(e)
	if f.fresh && !f.area {
		f.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	f.fresh = false
}

// TypedRune replaces all that stood in a line that was only just entered: the
// toolkit holds back a tap for as long as it may become a double one, and takes
// the mark off as the button goes down.
func (f *Field) TypedRune(r rune) {
	if r == ' ' && f.fresh && (!f.area || f.Text == "") {
		return // it pressed the button that led here, and would wipe out what is marked
	}
	if f.fresh && !f.area {
		f.Entry.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	f.fresh = false
	at, marked := f.CursorTextOffset(), f.SelectedText() != ""
	f.Entry.TypedRune(r)
	if off := at + 1 - f.CursorTextOffset(); f.MultiLine && !marked && off != 0 {
		f.CursorColumn += off // the toolkit loses a place at the end of a wrapped line, and the next letter with it
	}
}

// TypedShortcut adds the keys for a text's first and last place to what an entry knows.
func (f *Field) TypedShortcut(s fyne.Shortcut) {
	f.fresh = false
	if to := textEnd(s); to != "" {
		f.Entry.TypedKey(&fyne.KeyEvent{Name: to})
		return
	}
	f.Entry.TypedShortcut(s)
	f.straighten()
}

// textEnd is the toolkit's own key for where Ctrl Home or Ctrl End leads; "" for anything else.
func textEnd(s fyne.Shortcut) fyne.KeyName {
	c, ok := s.(*desktop.CustomShortcut)
	switch {
	case ok && c.Modifier == fyne.KeyModifierShortcutDefault && c.KeyName == fyne.KeyHome:
		return fyne.KeyPageUp
	case ok && c.Modifier == fyne.KeyModifierShortcutDefault && c.KeyName == fyne.KeyEnd:
		return fyne.KeyPageDown
	}
	return ""
}

// FocusLost keeps what was typed.
func (f *Field) FocusLost() {
	f.focused = false
	f.Entry.FocusLost()
	if f.onBlur != nil {
		f.onBlur()
	}
	f.Leave()
	if !f.area && (f.CursorRow != 0 || f.CursorColumn != 0) {
		f.CursorRow, f.CursorColumn = 0, 0 // a long text is read from its beginning
		f.Entry.Refresh()
	}
}

// TypedKey adds Escape to what an entry knows: with nothing to take back it is the window's. The page keys are too,
// where there is but one line.
func (f *Field) TypedKey(e *fyne.KeyEvent) {
	if _, page := pageWay(e); page && !f.area {
		passed(f.self, e)
		return
	}
	f.fresh = f.fresh && !movesCaret(e.Name)
	if e.Name == fyne.KeyEscape {
		if !f.Revert() {
			leave(f.self, e)
		}
		return
	}
	if f.folded() && (e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter) {
		f.OnSubmitted(f.Text)
		return
	}
	f.Entry.TypedKey(e)
}

// movesCaret tells the keys after which a digit belongs where the caret is. The
// digits' own keys come here too.
func movesCaret(k fyne.KeyName) bool {
	switch k {
	case fyne.KeyLeft, fyne.KeyRight, fyne.KeyHome, fyne.KeyEnd, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyBackspace, fyne.KeyDelete:
		return true
	}
	return false
}
