package causes

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// list is the causes, one a line; the small ones are one line together until
// it is opened. Arrows go along it and Space chooses.
type list struct {
	widget *widget.List
	chosen func(cases.Cause)
	causes []Cause
	whole  bool // the small ones are shown each
	quiet  bool
}

// Causes from here on are shown; at most so many, and always the likeliest.
const (
	showFrom = 0.01
	showMost = 8
)

func newList(chosen func(cases.Cause)) *list {
	l := &list{chosen: chosen}
	l.widget = widget.NewList(l.length, newLine, l.fill)
	l.widget.HideSeparators = true
	l.widget.OnSelected = l.selected
	return l
}

func (l *list) show(causes []Cause, chosen cases.Cause) {
	l.quiet = true
	defer func() { l.quiet = false }()
	l.causes = causes
	row := 0
	for i, c := range causes {
		if c.Cause == chosen {
			row = i
		}
	}
	l.whole = l.whole || row > 0 && row >= l.told()
	l.widget.Refresh()
	if len(causes) > 0 {
		l.widget.Select(row)
	}
}

// told is how many causes have a line of their own.
func (l *list) told() int {
	if l.whole {
		return len(l.causes)
	}
	n := 0
	for n < len(l.causes) && n < showMost && (n == 0 || l.causes[n].Probability >= showFrom) {
		n++
	}
	return n
}

func (l *list) length() int {
	if n := l.told(); n < len(l.causes) {
		return n + 1
	}
	return len(l.causes)
}

func (l *list) selected(row int) {
	switch {
	case l.quiet:
	case row < l.told():
		l.chosen(l.causes[row].Cause)
	default:
		l.whole = true
		l.widget.Refresh()
		l.widget.UnselectAll()
	}
}

func (l *list) chance(c cases.Cause) string {
	for _, at := range l.causes {
		if at.Cause == c {
			return percent(at.Probability)
		}
	}
	return ""
}

// percent never says that anything is sure.
func percent(p float64) string {
	switch {
	case p > 0.99:
		return "> 99 %"
	case p < 0.01:
		return "< 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}

func newLine() fyne.CanvasObject {
	name := widget.NewLabel("")
	name.Truncation = fyne.TextTruncateEllipsis
	share := widget.NewLabel("")
	share.TextStyle.Bold = true
	return container.New(kit.Tight{More: 2}, container.NewBorder(nil, nil, nil, share, name), container.NewPadded(kit.NewMeter()))
}

func (l *list) fill(row int, o fyne.CanvasObject) {
	line := o.(*fyne.Container).Objects
	words, bar := line[0].(*fyne.Container).Objects, line[1].(*fyne.Container)
	name, share, meter := words[0].(*widget.Label), words[1].(*widget.Label), bar.Objects[0].(*kit.Meter)
	if row >= l.told() {
		sum := 0.0
		for _, c := range l.causes[row:] {
			sum += c.Probability
		}
		name.SetText(fmt.Sprintf("%d others, together", len(l.causes)-row))
		share.SetText(percent(sum))
		bar.Hide()
		return
	}
	c := l.causes[row]
	name.SetText(capital(c.Cause.Name()))
	share.SetText(percent(c.Probability))
	bar.Show()
	meter.Put(c.Probability)
}
