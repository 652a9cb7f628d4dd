package warmup

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram/units"
)

// rows lists what is written down, the newest first, with what can be done with the one that is
// chosen. It is no higher than a few lines: the fields over it are to stay in sight.
type rows struct {
	all     []row // in the order of time
	units   units.Set
	chosen  func(row)
	quiet   bool
	list    *kit.List
	hint    *widget.Label
	which   *widget.Label // the row that is mended
	doing   *fyne.Container
	content *fyne.Container
}

func newRows(chosen func(row), keep, remove func(), back func() bool) *rows {
	r := &rows{chosen: chosen, units: units.Metric(), hint: kit.Small(kit.L("window.warmup.rows")), which: kit.Small("")}
	r.list = kit.NewList(func() int { return len(r.all) }, line, r.fill)
	r.list.HideSeparators = true
	r.list.OnSelected = func(id widget.ListItemID) {
		if !r.quiet {
			r.chosen(r.newest(id))
		}
	}
	r.which.Importance, r.which.TextStyle.Bold = widget.WarningImportance, true
	buttons := container.NewHBox(kit.NewButton(kit.L("window.warmup.keep"), keep), kit.NewButton(kit.L("window.warmup.delete"), remove),
		kit.NewButton(kit.L("window.warmup.back"), func() { back() }))
	r.doing = kit.Framed(nil, nil, nil, buttons, r.which)
	r.doing.Hide()
	// Neither the fields nor the rows move as the buttons come.
	head := kit.Roomy(buttons.MinSize(), container.NewStack(r.hint, r.doing))
	r.content = container.NewVBox(head, container.New(few{r}, r.list))
	r.content.Hide()
	return r
}

// newest is the row of a line.
func (r *rows) newest(line int) row { return r.all[len(r.all)-1-line] }

// show lists rows; m is mended, if any is.
func (r *rows) show(all []row, u units.Set, m *mending) {
	r.all, r.units = all, u
	kit.SetVisible(len(all) > 0, r.content)
	r.content.Refresh()
	r.mend(m)
}

// mend marks the row that is mended; nil: none is.
func (r *rows) mend(m *mending) {
	kit.SetVisible(m != nil, r.doing)
	kit.SetVisible(m == nil, r.hint)
	r.quiet = true
	defer func() { r.quiet = false }()
	if m == nil {
		r.list.UnselectAll()
		return
	}
	r.which.SetText(kit.L("window.warmup.mend", written(m.was.minutes)))
	r.list.Select(len(r.all) - 1 - slices.IndexFunc(r.all, m.was.same))
}

// line is an empty line of the list.
func line() fyne.CanvasObject {
	cells := container.New(low{kit.Shares{68, 64, 72, 74}})
	for range 4 {
		l := widget.NewLabel("")
		l.SizeName, l.Alignment = theme.SizeNameCaptionText, fyne.TextAlignTrailing
		cells.Add(l)
	}
	return cells
}

func (r *rows) fill(at widget.ListItemID, o fyne.CanvasObject) {
	row := r.newest(at)
	texts := row.texts(r.units)
	units := [4]string{kit.L("window.warmup.min"), string(r.units.Temperature), kit.L("window.warmup.per-minute"), r.units.SpeedUnit()}
	for i, cell := range o.(*fyne.Container).Objects {
		text := ""
		if texts[i] != "" {
			text = texts[i] + " " + units[i]
		}
		cell.(*widget.Label).SetText(text)
	}
}

// low lays labels beside each other without the padding over and under them.
type low struct{ kit.Shares }

// MinSize is as high as a line of text and half its padding.
func (l low) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return l.Shares.MinSize(objects).SubtractWidthHeight(0, theme.InnerPadding())
}

// Layout gives each label its share.
func (l low) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	l.Shares.Layout(objects, room.AddWidthHeight(0, theme.InnerPadding()))
	for _, o := range objects {
		o.Move(o.Position().SubtractXY(0, theme.InnerPadding()/2))
	}
}

// few is as high as the rows, or as the most that are seen at once.
type few struct{ *rows }

const mostSeen = 5

// MinSize is that of the lines.
func (f few) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := line().MinSize()
	n := float32(min(len(f.all), mostSeen))
	return fyne.NewSize(size.Width, n*size.Height+max(0, n-1)*theme.Padding())
}

// Layout gives the list all of the room.
func (f few) Layout(objects []fyne.CanvasObject, room fyne.Size) {
	objects[0].Move(fyne.Position{})
	objects[0].Resize(room)
}
