package kit

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram/drawing"
)

// Refusals tells what a group of narrow fields refused and why, in a line over the labels
// from the refused one's on: so nothing moves under a hand that is about to click. Where they are
// too many for a line, it tells of the one that the hand is at, or was last, and how many others there are.
type Refusals struct {
	Content fyne.CanvasObject

	inner  fyne.CanvasObject
	line   *widget.Label
	ground *Ground // hides the labels under the line
	why    map[*Field]error
	last   *Field // the one that was refused or entered last
}

// NewRefusals hangs a line over fields. A field without a label is told of at the top, where
// the heads of its column stand.
func NewRefusals(fields fyne.CanvasObject) *Refusals {
	r := &Refusals{inner: fields, line: Small(""), ground: NewGround(drawing.Paper, "", 0), why: map[*Field]error{}}
	r.line.Importance = widget.DangerImportance
	r.Content = container.New(over{r}, fields, r.ground, r.line)
	r.Take(fields)
	r.show()
	return r
}

// Explained is the content of NewRefusals.
func Explained(fields fyne.CanvasObject) fyne.CanvasObject { return NewRefusals(fields).Content }

// Take makes the line that of every field in o too, which the group holds or will hold.
func (r *Refusals) Take(o fyne.CanvasObject) {
	switch o := o.(type) {
	case *Field:
		o.told = r
	case *fyne.Container:
		for _, inner := range o.Objects {
			r.Take(inner)
		}
	}
}

func (r *Refusals) tell(f *Field, why error) {
	if why != nil {
		r.why[f], r.last = why, f
	} else if delete(r.why, f); r.last == f {
		r.last = nil
	}
	r.show()
}

// entered is told where the hand is.
func (r *Refusals) entered(f *Field) {
	if r.why[f] != nil {
		r.last = f
		r.show()
	}
}

func (r *Refusals) show() {
	none := len(r.refused()) == 0
	r.line.Hidden, r.ground.Hidden = none, none
	r.Content.Refresh()
}

// say puts as much as a line has room for into it, and returns the field that it stands over.
func (r *Refusals) say(list []*Field, room float32) *Field {
	told := make([]string, len(list))
	for i, f := range list {
		told[i] = L("window.kit.refused", Capital(f.title), reason(r.why[f]))
	}
	r.line.SetText(L("window.kit.refusals", strings.Join(told, " · ")))
	if len(list) == 1 || width(r.line) < room {
		return list[0]
	}
	at := max(slices.Index(list, r.last), 0)
	r.line.SetText(L("window.kit.refusals-more", told[at], len(list)-1))
	return list[at]
}

// refused are the fields that hold what was refused, in their order.
func (r *Refusals) refused() (out []*Field) {
	for _, f := range Refused(r.inner) {
		if r.why[f] != nil {
			out = append(out, f)
		}
	}
	return out
}

// over lays the line of refusals over the fields' labels.
type over struct{ *Refusals }

// MinSize is that of the fields.
func (o over) MinSize([]fyne.CanvasObject) fyne.Size { return o.inner.MinSize() }

// Layout begins the line over the field that it tells of first, or as far before as its words want.
func (o over) Layout(_ []fyne.CanvasObject, room fyne.Size) {
	o.inner.Move(fyne.Position{})
	o.inner.Resize(room)
	list := o.refused()
	if len(list) == 0 {
		return
	}
	at := fyne.Position{}
	if label := o.say(list, room.Width).label; label != nil {
		at, _ = within(o.inner, label)
	}
	wide, high := width(o.line)+1, o.line.MinSize().Height
	at.X = max(0, min(at.X, room.Width-wide))
	wide = min(wide, room.Width-at.X)
	o.line.Move(at)
	o.line.Resize(fyne.NewSize(wide, high))
	from, to := covered(o.inner, at, at.X+wide)
	o.ground.Move(fyne.NewPos(from, at.Y))
	o.ground.Resize(fyne.NewSize(to-from, high-theme.InnerPadding()))
}

// covered widens what lies over a row of labels from at as far as to, so that none is cut
// through.
func covered(root fyne.CanvasObject, at fyne.Position, to float32) (float32, float32) {
	from := at.X
	for _, inner := range inside(root) {
		l, ok := inner.(*widget.Label)
		x := inner.Position()
		if !ok {
			low, high := covered(inner, fyne.NewPos(from, at.Y).Subtract(x), to-x.X)
			from, to = min(from, low+x.X), max(to, high+x.X)
			continue
		}
		begin, end := words(l)
		if begin, end = begin+x.X, end+x.X; x.Y == at.Y && begin < to && end > from {
			from, to = min(from, begin), max(to, end)
		}
	}
	return from, to
}

// words is where a label's words begin and end in it.
func words(l *widget.Label) (begin, end float32) {
	wide := min(width(l), l.Size().Width)
	if l.Alignment == fyne.TextAlignTrailing {
		begin = l.Size().Width - wide
	}
	return begin, begin + wide
}

// width is that of a label's words.
func width(l *widget.Label) float32 {
	return fyne.MeasureText(l.Text, theme.CaptionTextSize(), fyne.TextStyle{}).Width + 2*theme.InnerPadding()
}
