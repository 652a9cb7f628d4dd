package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

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
