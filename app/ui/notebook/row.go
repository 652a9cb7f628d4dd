package notebook

import (
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// row is one case in the list. It is reused for many.
type row struct {
	widget.BaseWidget
	title, vehicle, state, when *widget.Label
	found                       *widget.RichText // where the words stand, in the place of the state
	shown                       cases.Summary
	snippet                     string
	day                         string
	last, all                   *fyne.Container // how far it is, and the day; the lines
}

func newRow() *row {
	r := &row{title: widget.NewLabel(""), vehicle: kit.Small(""), state: kit.Small(""), when: kit.Small(""), found: widget.NewRichText()}
	r.title.TextStyle.Bold = true
	r.title.Wrapping, r.title.Truncation = fyne.TextWrapWord, fyne.TextTruncateEllipsis
	r.when.Truncation = fyne.TextTruncateOff
	r.found.Truncation = fyne.TextTruncateEllipsis
	r.found.Hide()
	r.last = container.NewBorder(nil, nil, nil, r.when, container.NewStack(r.state, r.found))
	r.all = container.New(lines{r.title}, r.title, r.vehicle, r.last)
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer stacks the lines.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(r.all)
}

// show writes the lines, which costs far more than to see that they stand
// already.
func (r *row) show(s cases.Summary, found cases.Snippet, now time.Time) {
	on := day(s.Opened, now)
	if s == r.shown && on == r.day && found.Text == r.snippet {
		return
	}
	r.shown, r.day, r.snippet = s, on, found.Text
	r.title.SetText(orDash(s.Title, kit.L("window.notebook.no-title")))
	r.all.Layout.Layout(r.all.Objects, r.all.Size()) // it may take another number of lines
	r.vehicle.SetText(orDash(s.Vehicle, kit.L("window.notebook.no-vehicle")))
	r.when.SetText(on)
	r.last.Layout.Layout(r.last.Objects, r.last.Size())
	text, ink := kit.L("window.notebook.stage-open"), widget.HighImportance // what is still to be done stands out
	if s.Cause != "" {
		text, ink = s.Cause.Name(), widget.MediumImportance
	}
	r.state.Importance, r.state.TextStyle.Bold = ink, s.Cause == ""
	r.state.SetText(text)
	r.state.Hidden, r.found.Hidden = found.Text != "", found.Text == ""
	if found.Text != "" {
		r.found.Segments = marked(around(found))
		r.found.Refresh()
	}
}

// before a hit so many letters are shown: a row is narrow.
const before = 12

// around begins with a word a little before the first hit, so that it is in sight.
func around(s cases.Snippet) cases.Snippet {
	if len(s.Marks) == 0 || s.Marks[0][0] <= before {
		return s
	}
	from := s.Marks[0][0] - before
	for from < s.Marks[0][0] && !strings.ContainsRune(" \n", rune(s.Text[from-1])) {
		from++
	}
	out := cases.Snippet{Text: "…" + s.Text[from:]}
	shift := from - len("…")
	for _, m := range s.Marks {
		out.Marks = append(out.Marks, [2]int{m[0] - shift, m[1] - shift})
	}
	return out
}

// marked is the text with its hits bold.
func marked(s cases.Snippet) []widget.RichTextSegment {
	var out []widget.RichTextSegment
	add := func(text string, hit bool) {
		if text == "" {
			return
		}
		style := widget.RichTextStyle{Inline: true, SizeName: theme.SizeNameCaptionText, ColorName: theme.ColorNamePlaceHolder}
		if hit {
			style.ColorName, style.TextStyle.Bold = theme.ColorNameForeground, true
		}
		out = append(out, &widget.TextSegment{Text: text, Style: style})
	}
	at := 0
	for _, m := range s.Marks {
		add(s.Text[at:m[0]], false)
		add(s.Text[m[0]:m[1]], true)
		at = m[1]
	}
	add(s.Text[at:], false)
	return out
}

func orDash(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// day writes a date as short as it can still be told from others.
func day(t, now time.Time) string {
	t = t.In(now.Location())
	switch {
	case t.IsZero():
		return ""
	case t.Year() == now.Year() && t.YearDay() == now.YearDay():
		return kit.L("window.notebook.today")
	case t.Year() == now.Year():
		return t.Format("2 Jan")
	}
	return t.Format("Jan 2006")
}
