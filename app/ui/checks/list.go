package checks

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// kindList lists the kinds of check with how they came out. Up and Down choose,
// Enter goes into the form.
type kindList struct {
	widget.List
	v     *View
	kinds []cases.TestKind
	quiet bool
}

func newKindList(v *View) *kindList {
	l := &kindList{v: v, kinds: cases.Words[cases.TestKind]()}
	l.Length = func() int { return len(l.kinds) }
	l.CreateItem = func() fyne.CanvasObject { return newKindRow() }
	l.UpdateItem = func(i widget.ListItemID, o fyne.CanvasObject) { l.fill(i, o.(*kindRow)) }
	l.OnSelected = func(i widget.ListItemID) {
		if !l.quiet {
			v.choose(l.kinds[i])
		}
	}
	l.HideSeparators = true
	l.ExtendBaseWidget(l)
	return l
}

func (l *kindList) show() {
	l.quiet = true
	defer func() { l.quiet = false }()
	l.Refresh()
	l.Select(l.chosen())
}

func (l *kindList) chosen() int {
	for i, k := range l.kinds {
		if k == l.v.kind {
			return i
		}
	}
	return 0
}

// TypedKey chooses as the arrows go.
func (l *kindList) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyPageUp:
		l.step(fyne.KeyUp, pageLines)
	case fyne.KeyPageDown:
		l.step(fyne.KeyDown, pageLines)
	case fyne.KeyUp, fyne.KeyDown:
		l.step(e.Name, 1)
	case fyne.KeyHome:
		l.step(fyne.KeyUp, len(l.kinds))
	case fyne.KeyEnd:
		l.step(fyne.KeyDown, len(l.kinds))
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyRight:
		l.v.FocusForm()
	}
}

// pageLines are fewer than a screen shows.
const pageLines = 8

// step goes some lines on and chooses where it comes to.
func (l *kindList) step(way fyne.KeyName, lines int) {
	for i := 0; i < lines; i++ {
		l.List.TypedKey(&fyne.KeyEvent{Name: way})
	}
	l.List.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
}

func (l *kindList) fill(i int, row *kindRow) {
	kind := l.kinds[i]
	info := l.v.info(kind)
	if told, sign := l.done(kind); told != "" {
		row.put(info.Title, kit.Capital(told), sign)
		return
	}
	row.put(info.Title, joined(" · ", info.Minutes, strings.ToLower(info.Needs)), "")
}

// done is how a kind's checks came out, the last one first, whose sign it is: there may be room for no other.
func (l *kindList) done(kind cases.TestKind) (told, sign string) {
	var all []string
	repaired := false
	tests := l.v.tests(kind)
	for i := len(tests) - 1; i >= 0; i-- {
		says, so := l.outcome(tests[i])
		if all == nil {
			sign = so
		}
		switch after := l.v.c.Tests[tests[i]].Stage == cases.AfterRepair; {
		case after:
			says, repaired = kit.L("window.checks.after-repair", says), true
		case repaired:
			says = kit.L("window.checks.before-it", says)
		}
		all = append(all, says)
	}
	return strings.Join(all, ", "), sign
}

func (l *kindList) outcome(at int) (says, sign string) {
	switch r := l.v.result(at); {
	case r.Says != "":
		return r.Says, severity(r)
	case len(r.Told) > 0:
		return kit.L("window.checks.look-at"), severity(r)
	}
	return kit.L("window.checks.begun"), "note"
}

func joined(by string, parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, by)
}

// kindRow is a line of the list: the check, and how it came out.
type kindRow struct {
	widget.BaseWidget
	title, done *widget.Label
	sign        *fyne.Container
	worst       string
}

func newKindRow() *kindRow {
	r := &kindRow{title: widget.NewLabel(""), done: kit.Small(""), sign: container.NewCenter()}
	r.title.Truncation = fyne.TextTruncateEllipsis
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer puts the sign before the words.
func (r *kindRow) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewBorder(nil, nil, kit.Wide(20, r.sign), nil, container.New(twoLines{}, r.title, r.done)))
}

func (r *kindRow) put(title, done, worst string) {
	r.title.TextStyle.Bold = worst != ""
	r.title.SetText(title)
	r.done.SetText(done)
	if worst == r.worst {
		return
	}
	r.worst = worst
	r.sign.RemoveAll()
	if worst != "" {
		r.sign.Add(kit.Sign(worst))
	}
}

// twoLines sets two lines of text closer than a box would, so that all kinds fit
// into a window of 800.
type twoLines struct{}

const (
	rowHeight  = 46
	lineHeight = 20
	rowOver    = 4 // what the first line's own padding takes off the top
)

// MinSize is of a fixed height.
func (twoLines) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(max(o[0].MinSize().Width, o[1].MinSize().Width), rowHeight)
}

// Layout puts the second line under the first.
func (twoLines) Layout(o []fyne.CanvasObject, room fyne.Size) {
	for i, line := range o {
		line.Move(fyne.NewPos(0, lineHeight*float32(i)-rowOver))
		line.Resize(fyne.NewSize(room.Width, line.MinSize().Height))
	}
}
