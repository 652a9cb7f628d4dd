package kit

import (
	"strings"
	"unicode/utf8"

	"fyne.io/fyne/v2"
)

// longest is as many letters as one line shows. The toolkit paints a line as one picture, and one of some thousand
// letters is too wide for what paints it: it comes out black.
const longest = 200

// fold lays a line that is too long for one into rows, of which some are seen, and back once it is shorter. It reports
// whether it just came to lie in rows.
func (f *Field) fold() bool {
	long := utf8.RuneCountInString(f.Text) > longest
	if f.area || long == f.MultiLine {
		return false
	}
	f.MultiLine = long
	if !long {
		f.Wrapping, f.Scroll = fyne.TextWrapOff, f.along
		return false
	}
	f.along = f.Scroll
	f.Wrapping, f.Scroll = fyne.TextWrapWord, fyne.ScrollVerticalOnly
	return true
}

// folded reports whether what is one line lies in rows.
func (f *Field) folded() bool { return f.MultiLine && !f.area }

// straighten makes what was pasted into rows one line again, as the toolkit does where there is but one.
func (f *Field) straighten() {
	if f.folded() && strings.Contains(f.Text, "\n") {
		f.SetText(strings.ReplaceAll(f.Text, "\n", " "))
		f.toEnd()
	}
}

// toEnd sets the caret behind the last letter.
func (f *Field) toEnd() { f.Entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown}) }
