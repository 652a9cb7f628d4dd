package kit

import (
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Span is a paragraph of a text, in one of the theme's colours and sizes.
type Span struct {
	Text  string
	Bold  bool
	Small bool
	Color fyne.ThemeColorName // empty is the ink
}

func (s Span) segment() *widget.TextSegment {
	style := widget.RichTextStyle{SizeName: theme.SizeNameText, ColorName: theme.ColorNameForeground, TextStyle: fyne.TextStyle{Bold: s.Bold}}
	if s.Small {
		style.SizeName = theme.SizeNameCaptionText
	}
	if s.Color != "" {
		style.ColorName = s.Color
	}
	return &widget.TextSegment{Text: s.Text, Style: style}
}

// Heading is the title of a part of a screen.
func Heading(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName, l.TextStyle.Bold = theme.SizeNameSubHeadingText, true
	return l
}

// Small is a line of second-rank text that is cut, not wrapped.
func Small(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName, l.Importance, l.Truncation = theme.SizeNameCaptionText, widget.LowImportance, fyne.TextTruncateEllipsis
	return l
}

// Caption is a short line of second-rank text that is never cut.
func Caption(text string) *widget.Label {
	l := Small(text)
	l.Truncation = fyne.TextTruncateOff
	return l
}

// Labelled puts a small label over a field, closer than a box would.
func Labelled(label string, field fyne.CanvasObject) fyne.CanvasObject {
	over := Small(label)
	if f, ok := field.(*Field); ok {
		f.label, f.title = over, label
	}
	return container.New(Tight{}, over, field)
}

// Reveal shows or hides a wrapped line that stands in something so wide. Nothing lays out what is
// hidden: it would ask for one line as it comes, and run over what stands below.
func Reveal(line *widget.Label, on bool, width float32) {
	line.Resize(fyne.NewSize(width, line.Size().Height))
	SetVisible(on, line)
}

// SetVisible shows all of the objects, or hides them.
func SetVisible(on bool, objects ...fyne.CanvasObject) {
	for _, o := range objects {
		if on {
			o.Show()
		} else {
			o.Hide()
		}
	}
}

// Move puts an object into one of two places that are empty without it.
func Move(o fyne.CanvasObject, one, other *fyne.Container, intoOne bool) {
	if !intoOne {
		one, other = other, one
	}
	if len(one.Objects) > 0 {
		return
	}
	other.RemoveAll()
	one.Add(o)
}

// Cut shortens words to a width, for what would grow with them, as a button does.
func Cut(words string, width float32) string {
	fits := func(s string) bool { return BoldWidth(s) <= width }
	if fits(words) {
		return words
	}
	all := []rune(words)
	most := max(1, sort.Search(len(all), func(n int) bool { return !fits(string(all[:n+1]) + "…") }))
	return strings.TrimRight(string(all[:most]), " ,.;:") + "…"
}

// BoldWidth is how wide words are on a button.
func BoldWidth(words string) float32 {
	return fyne.MeasureText(words, theme.TextSize(), fyne.TextStyle{Bold: true}).Width
}
