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

// Paragraphs shows spans, one a line, wrapped.
func Paragraphs(spans ...Span) *widget.RichText {
	t := widget.NewRichText()
	SetParagraphs(t, spans...)
	return t
}

// SetParagraphs replaces what a text shows.
func SetParagraphs(t *widget.RichText, spans ...Span) {
	t.Wrapping = fyne.TextWrapWord
	t.Segments = t.Segments[:0]
	for _, s := range spans {
		style := widget.RichTextStyle{SizeName: theme.SizeNameText, ColorName: theme.ColorNameForeground, TextStyle: fyne.TextStyle{Bold: s.Bold}}
		if s.Small {
			style.SizeName = theme.SizeNameCaptionText
		}
		if s.Color != "" {
			style.ColorName = s.Color
		}
		t.Segments = append(t.Segments, &widget.TextSegment{Text: s.Text, Style: style})
	}
	t.Refresh()
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

// Card is a piece of news with its sign, its word and its reasons.
func Card(severity, word string, body ...Span) fyne.CanvasObject {
	return CardOf(severity, word, Paragraphs(body...))
}

// CardOf is a card whose reasons change while it stands. A card made anew for other
// words doesn't know how wide it will be, asks for one line, and the toolkit's painter
// may forget to ask it again.
func CardOf(severity, word string, body *widget.RichText) fyne.CanvasObject {
	fill, edge := Grounds(severity)
	head := widget.NewLabel(word)
	head.TextStyle.Bold = true
	head.Importance = importance(severity)
	top := container.NewHBox(container.NewCenter(Sign(severity)), head)
	return On(NewGround(fill, edge, 6), container.New(Tight{}, top, body))
}

// Signed puts a severity's sign before the first line of a small text.
func Signed(severity string, text fyne.CanvasObject) fyne.CanvasObject {
	sign := container.NewVBox(container.NewStack(Caption(""), container.NewCenter(Sign(severity))))
	return container.NewBorder(nil, nil, sign, nil, text)
}

// Warning is a small text that is to be seen, with its sign.
func Warning(text string) fyne.CanvasObject {
	return Signed("look", Paragraphs(Span{Text: text, Small: true, Bold: true, Color: theme.ColorNameWarning}))
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

func importance(severity string) widget.Importance {
	switch severity {
	case "act":
		return widget.DangerImportance
	case "look":
		return widget.WarningImportance
	case "note":
		return widget.HighImportance
	}
	return widget.SuccessImportance
}

// Tight stacks objects from the top with the text padding between them taken
// out, so that a label stands close to what it names. The last takes the rest
// of the height.
type Tight struct {
	More float32 // how much closer than the padding
}

func (t Tight) overlap() float32 { return theme.InnerPadding() + t.More }

// MinSize is as wide as the widest and as high as all, less the padding.
func (t Tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for i, o := range visible(objects) {
		m := o.MinSize()
		size.Width = fyne.Max(size.Width, m.Width)
		size.Height += m.Height
		if i > 0 {
			size.Height -= t.overlap()
		}
	}
	return size
}

// Layout stacks the objects.
func (t Tight) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	y := float32(0)
	list := visible(objects)
	for i, o := range list {
		h := o.MinSize().Height
		if i == len(list)-1 {
			h = room.Height - y
		}
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(room.Width, h))
		y += h - t.overlap()
	}
}

func visible(objects []fyne.CanvasObject) []fyne.CanvasObject {
	out := make([]fyne.CanvasObject, 0, len(objects))
	for _, o := range objects {
		if o.Visible() {
			out = append(out, o)
		}
	}
	return out
}

// Shares lays objects beside each other, each with its share of the width.
type Shares []float32

// MinSize is the widths and the greatest height.
func (s Shares) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for i, o := range objects {
		size.Width += s[i]
		size.Height = fyne.Max(size.Height, o.MinSize().Height)
	}
	return size.Add(fyne.NewSize(float32(len(objects)-1)*gap, 0))
}

const gap = 4

// Layout gives each object its share.
func (s Shares) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	sum := float32(0)
	for _, share := range s {
		sum += share
	}
	x, free := float32(0), room.Width-gap*float32(len(objects)-1)
	for i, o := range objects {
		w := free * s[i] / sum
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(w, room.Height))
		x += w + gap
	}
}

// Wide makes an object at least that wide.
func Wide(width float32, o fyne.CanvasObject) fyne.CanvasObject {
	return Roomy(fyne.NewSize(width, 0), o)
}

// Roomy makes an object at least that large.
func Roomy(least fyne.Size, o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(atLeast(least), o)
}

type atLeast fyne.Size

// MinSize is the object's or the least, whichever is larger.
func (m atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.Size(m))
}

// Layout fills the room.
func (m atLeast) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(room)
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
