package kit

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Prose is a text of paragraphs that keeps its numbers on one line with their units. The toolkit breaks a line at every kind
// of space, also at one that says not to, so a line that would end with a number is ended before it.
type Prose struct{ widget.RichText }

// Paragraphs shows spans, one a line, wrapped.
func Paragraphs(spans ...Span) *Prose {
	p := &Prose{}
	p.Wrapping, p.Scroll = fyne.TextWrapWord, container.ScrollNone
	p.ExtendBaseWidget(p)
	p.tell(spans)
	return p
}

// SetParagraphs replaces what a text shows.
func SetParagraphs(p *Prose, spans ...Span) {
	p.tell(spans)
	p.endLines(p.Size().Width)
	p.Refresh()
}

func (p *Prose) tell(spans []Span) {
	p.Segments = p.Segments[:0]
	for _, s := range spans {
		p.Segments = append(p.Segments, s.segment())
	}
}

// Resize ends lines anew for the width.
func (p *Prose) Resize(room fyne.Size) {
	p.endLines(room.Width)
	p.RichText.Resize(room)
}

// String is the text without the ends of lines that were put in.
func (p *Prose) String() string { return strings.ReplaceAll(p.RichText.String(), ended, " ") }

func (p *Prose) endLines(width float32) {
	room := width - 2*theme.InnerPadding()
	if room <= 0 {
		return // it isn't laid out yet
	}
	for _, s := range p.Segments {
		line, ok := s.(*widget.TextSegment)
		if !ok {
			continue
		}
		size, style := theme.Size(line.Style.SizeName), line.Style.TextStyle
		line.Text = endLines(strings.ReplaceAll(line.Text, ended, " "), func(s string) bool {
			return fyne.MeasureText(s, size, style).Width <= room
		})
	}
}

// ended is a space at which a line was ended here.
const ended = " \n"

// endLines ends each line that would part a number from its unit before the number.
func endLines(text string, fits func(string) bool) string {
	words := strings.Split(text, " ")
	var out strings.Builder
	line := ""
	for i, word := range words {
		switch whole := word; {
		case i == 0:
			line = word
		default:
			gap := " "
			if i+1 < len(words) && parted(word, words[i+1]) {
				whole += " " + words[i+1]
			}
			switch {
			case !fits(line + " " + word):
				line = word // the toolkit ends it
			case !fits(line+" "+whole) && fits(whole):
				line, gap = word, ended
			default:
				line += " " + word
			}
			out.WriteString(gap)
		}
		out.WriteString(word)
		if at := strings.LastIndex(word, "\n"); at >= 0 {
			line = word[at+1:]
		}
	}
	return out.String()
}

// parted reports whether a line between the words would part a number from what it counts in: a unit is short, or has a
// sign in it.
func parted(number, unit string) bool {
	last, _ := utf8.DecodeLastRuneInString(number)
	first, _ := utf8.DecodeRuneInString(unit)
	unit = strings.TrimRight(unit, ".,;:)!?")
	return unicode.IsDigit(last) && first != 0 && !unicode.IsDigit(first) &&
		(strings.ContainsAny(unit, "°%/") || utf8.RuneCountInString(unit) <= 3)
}
