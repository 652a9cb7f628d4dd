// Package compare shows two cases side by side: what one says, what the other says,
// and where they differ.
package compare

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Row is one place of the cases with what each says there; empty: nothing.
type Row struct {
	Where       string
	Left, Right string
}

// New lays rows under two headings; the differing ones stand first and are marked by
// their sign.
func New(left, right string, differ, same []Row) fyne.CanvasObject {
	lines := []fyne.CanvasObject{line("", head(left), head(right))} // put in at once: each that is added lays out all of them
	lines = append(lines, rows(differ, false)...)
	if len(differ) == 0 {
		lines = append(lines, kit.Caption(kit.L("window.compare.alike")))
	}
	if len(same) > 0 {
		lines = append(lines, kit.Heading(kit.L("window.compare.same", len(same))))
	}
	lines = append(lines, rows(same, true)...)
	return container.NewVScroll(container.NewPadded(container.NewVBox(lines...)))
}

// parted stands between the parts of a place, the largest first.
const parted = " · "

// rows lay what is said at each place under each other. What several in a row are parts of, as of one round, stands
// once over them.
func rows(all []Row, quiet bool) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	over := ""
	for i, r := range all {
		of, part, _ := strings.Cut(r.Where, parted)
		next := ""
		if i+1 < len(all) {
			next, _, _ = strings.Cut(all[i+1].Where, parted)
		}
		switch {
		case part == "":
			over, part = "", of
		case of == over:
		case of == next:
			over = of
			out = append(out, head(of))
		default:
			over, part = "", r.Where
		}
		out = append(out, line(part, text(r.Left, quiet), text(r.Right, quiet)))
		if !quiet {
			out = append(out, widget.NewSeparator())
		}
	}
	return out
}

// line has the place in the first column and the two texts beside it.
func line(where string, left, right fyne.CanvasObject) fyne.CanvasObject {
	place := widget.NewLabel(where)
	place.SizeName, place.Importance, place.Wrapping = theme.SizeNameCaptionText, widget.LowImportance, fyne.TextWrapWord
	return container.New(kit.Shares{180, 300, 300}, place, left, right)
}

func head(words string) fyne.CanvasObject {
	l := widget.NewLabel(words)
	l.TextStyle.Bold, l.Wrapping = true, fyne.TextWrapWord
	return l
}

func text(words string, quiet bool) fyne.CanvasObject {
	switch {
	case words == "":
		return kit.Aside(kit.L("window.compare.nothing"))
	case quiet:
		return kit.Aside(words)
	}
	return kit.Paragraphs(kit.Span{Text: words, Small: true})
}
