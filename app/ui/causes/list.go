package causes

import (
	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// list is the causes, one a line; the small ones are one line together until
// it is opened. Arrows go along it and Space chooses.
type list struct {
	widget *kit.List
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
	l.widget = kit.NewList(l.length, func() fyne.CanvasObject { return kit.NewLikelyLine() }, l.fill)
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
			return kit.Chance(at.Probability)
		}
	}
	return ""
}

func (l *list) fill(row int, o fyne.CanvasObject) {
	line := o.(*kit.LikelyLine)
	if row < l.told() {
		c := l.causes[row]
		line.Put(kit.Likely{Name: c.Cause.Name(), Chance: c.Probability})
		return
	}
	sum := 0.0
	for _, c := range l.causes[row:] {
		sum += c.Probability
	}
	line.PutRest(kit.L("window.causes.others", len(l.causes)-row), sum)
}
