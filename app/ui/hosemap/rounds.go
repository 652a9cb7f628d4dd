package hosemap

import (
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/units"
)

// chip is a round to choose, with its name and its condition.
type chip struct {
	widget.BaseWidget
	onTapped func()
	onMenu   func(fyne.Position)
	ground   *kit.Ground
	content  fyne.CanvasObject
}

func newChip(r cases.Round, number int, condition string, chosen, unkept bool, onTapped func(), onMenu func(fyne.Position)) *chip {
	c := &chip{onTapped: onTapped, onMenu: onMenu, ground: kit.NewGround(drawing.Card, drawing.Edge, 6)}
	if chosen {
		c.ground.Ink(drawing.Chosen, drawing.Accent, 2.5)
	}
	name := widget.NewLabel(kit.RoundName(r, number))
	name.TextStyle.Bold, name.Truncation = chosen, fyne.TextTruncateEllipsis
	under := kit.Small(condition)
	under.Truncation = fyne.TextTruncateEllipsis
	if unkept {
		under.Importance = widget.DangerImportance
		under.SetText(kit.L("window.frame.not-all-kept"))
	}
	c.content = kit.Wide(max(chipLeast, natural(name), natural(under)), container.NewStack(c.ground, container.New(kit.Tight{More: 6}, name, under)))
	c.ExtendBaseWidget(c)
	return c
}

// CreateRenderer shows the lines on their ground.
func (c *chip) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(c.content) }

// Tapped chooses the round.
func (c *chip) Tapped(*fyne.PointEvent) { c.onTapped() }

// TappedSecondary opens the round's menu.
func (c *chip) TappedSecondary(e *fyne.PointEvent) { c.onMenu(e.AbsolutePosition) }

func condition(r cases.Round, u units.Set) string {
	var words []string
	if r.Stage == cases.AfterRepair {
		words = append(words, r.Stage.Name())
	}
	if r.SpeedKmh != nil && *r.SpeedKmh > 0 {
		words = append(words, u.Speed(*r.SpeedKmh))
	} else if r.EngineRPM != nil {
		words = append(words, kit.L("value.rpm", *r.EngineRPM))
	}
	if r.Fan == cases.FanOn || r.Fan == cases.FanOff {
		words = append(words, kit.L("window.hosemap.fan-is", r.Fan.Text()))
	}
	if r.MinutesSinceStart != nil && len(words) == 0 {
		words = append(words, kit.L("window.minutes", *r.MinutesSinceStart))
	}
	switch {
	case len(words) > 0:
	case len(r.Readings) > 0:
		return kit.L("window.hosemap.no-conditions")
	default:
		return kit.L("window.hosemap.nothing-noted")
	}
	return strings.Join(words, ", ")
}

func (v *View) showRounds() {
	v.rounds.RemoveAll()
	for i, r := range v.data.Case.Rounds {
		v.rounds.Add(newChip(r, i, condition(r, v.data.Units), i == v.data.Round, v.unkept(i), func() { v.OnRound(i) }, func(at fyne.Position) { v.menu(i, at) }))
	}
	add := kit.NewButtonWithIcon(kit.L("window.hosemap.add"), theme.ContentAddIcon(), nil)
	add.OnTapped = func() { v.addMenu(add) }
	v.roundTools.RemoveAll()
	v.roundTools.Add(add)
	if v.data.round() != nil {
		more := kit.NewQuiet("", theme.MoreHorizontalIcon(), nil)
		more.OnTapped = func() { v.menu(v.data.Round, below(more)) }
		v.roundTools.Add(more)
	}
	v.scroller.Refresh() // gives the chips their room, which the offset is held to
	if before := v.data.Round - 1; before >= 0 && before < len(v.rounds.Objects) {
		v.scroller.ScrollToOffset(fyne.NewPos(v.rounds.Objects[before].Position().X, 0))
	} else {
		v.scroller.ScrollToOffset(fyne.Position{})
	}
}

// A chip is as wide as its words; where the room is scarce, not so that a long name takes all of it.
const (
	chipLeast = 132
	chipMost  = 200
)

// natural is how wide a label wants to be, with a hair more than what is measured: the toolkit cuts by one.
func natural(l *widget.Label) float32 {
	size := theme.TextSize()
	if l.SizeName != "" {
		size = theme.Size(l.SizeName)
	}
	return fyne.MeasureText(l.Text, size, l.TextStyle).Width + 2*theme.InnerPadding() + 1
}

func (v *View) addMenu(at fyne.CanvasObject) {
	items := []*fyne.MenuItem{}
	if v.data.round() != nil {
		items = append(items, fyne.NewMenuItem(kit.L("window.hosemap.same"), func() { v.AddRound("", true) }), fyne.NewMenuItemSeparator())
	}
	for _, usual := range cases.UsualRounds() {
		label := usual.String()
		items = append(items, fyne.NewMenuItem(label, func() { v.AddRound(label, false) }))
	}
	v.popUp(items, below(at))
}

func (v *View) menu(i int, at fyne.Position) {
	r := v.data.Case.Rounds[i]
	stage, word := cases.AfterRepair, kit.L("window.hosemap.is-after")
	if r.Stage == cases.AfterRepair {
		stage, word = cases.BeforeRepair, kit.L("window.hosemap.is-before")
	}
	v.popUp([]*fyne.MenuItem{
		fyne.NewMenuItem(word, func() {
			v.Edit(kit.L("window.hosemap.edit-stage"), func(c *cases.Case) { c.Rounds[i].Stage = stage })
		}),
		fyne.NewMenuItem(kit.L("window.hosemap.copy"), func() { v.Leave(); v.OnRound(i); v.AddRound("", true) }),
		fyne.NewMenuItem(kit.L("window.hosemap.delete"), func() { v.DeleteRound(i) }),
	}, at)
}

// AddRound adds a round at the end and shows it, with the conditions that a walk of that name asks for, or with this
// round's if wanted, what is being typed of them too.
func (v *View) AddRound(label string, same bool) {
	v.Leave()
	next := v.Walk(label)
	next.Stage = cases.BeforeRepair
	if r := v.data.round(); r != nil {
		next.Stage, next.Gun = r.Stage, r.Gun
		if same {
			next = alike(*r)
			next.Label = ""
		}
	}
	if kit.Repaired(&v.data.Case) {
		next.Stage = cases.AfterRepair
	}
	v.add(next)
	kit.Focus(v.conditions.label) // it wants a name
	v.focused(v.loop.Caret())
}

// Again walks a round of before the repair again, after it: it begins one with the same name
// and conditions. Like Begin it answers what wants the focus.
func (v *View) Again(i int) fyne.Focusable {
	next := alike(v.data.Case.Rounds[i])
	next.Stage = cases.AfterRepair
	return v.Begin(next)
}

// Read shows one point of a round and answers its field.
func (v *View) Read(round int, at diagram.Point) fyne.Focusable {
	v.OnRound(round)
	return v.loop.Field(at)
}

// Unread is the field of the first hose along the flow that the round hasn't read yet, or the first
// of all where each is read; nil where there is no round.
func (v *View) Unread() fyne.Focusable {
	r := v.data.round()
	if r == nil {
		return nil
	}
	for _, e := range v.data.Picture.Entries {
		if r.Reading(e.Point) == nil {
			return v.loop.Field(e.Point)
		}
	}
	return v.loop.Field("")
}

// Begin adds a round to walk, or shows the one that was begun so, and answers its first field: a
// screen that was never painted doesn't know its canvas. Another one that was begun and has
// nothing of its own in it yet is used up.
func (v *View) Begin(next cases.Round) fyne.Focusable {
	empty := func(r cases.Round) bool { return r.Stage == next.Stage && !r.Measured() }
	begun := slices.IndexFunc(v.data.Case.Rounds, func(r cases.Round) bool { return empty(r) && r.Label == next.Label })
	other := slices.IndexFunc(v.data.Case.Rounds, func(r cases.Round) bool { return empty(r) && !seen(r) })
	switch {
	case begun >= 0:
		v.OnRound(begun)
	case other >= 0:
		v.Edit(kit.L("window.hosemap.edit-new"), func(c *cases.Case) {
			if next.AmbientC == nil {
				next.AmbientC = c.Rounds[other].AmbientC
			}
			c.Rounds[other] = next
		})
		v.OnRound(other)
	default:
		v.add(next)
	}
	return v.loop.Field("")
}

// seen reports whether a round notes what was seen in it beside temperatures.
func seen(r cases.Round) bool { return r.MinutesSinceStart != nil || r.Gauge != "" || r.Fan != "" }

// alike is a round driven as r was, to be measured anew: what is seen there, the fan and the
// gauges, is seen anew too, and it is later.
func alike(r cases.Round) cases.Round {
	r.Readings, r.Extra = nil, nil
	r.EctC, r.Fan, r.Gauge, r.Taken, r.MinutesSinceStart = nil, "", "", time.Time{}, nil
	return r
}

func (v *View) add(r cases.Round) {
	n := len(v.data.Case.Rounds)
	v.aside.Begin()
	v.Edit(kit.L("window.hosemap.edit-new"), func(c *cases.Case) { c.Rounds = append(c.Rounds, r) })
	v.OnRound(n)
}

// DeleteRound takes a round away; Undo brings it back, with what is being typed in it.
func (v *View) DeleteRound(i int) {
	v.Leave()
	v.Edit(kit.L("window.hosemap.edit-deleted"), func(c *cases.Case) { c.Rounds = slices.Delete(slices.Clone(c.Rounds), i, i+1) })
	v.OnRound(min(i, len(v.data.Case.Rounds)-1))
}

func (v *View) popUp(items []*fyne.MenuItem, at fyne.Position) {
	c := fyne.CurrentApp().Driver().CanvasForObject(v.content)
	if c != nil {
		widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), c, at)
	}
}

func below(o fyne.CanvasObject) fyne.Position {
	return fyne.CurrentApp().Driver().AbsolutePositionForObject(o).AddXY(0, o.Size().Height)
}
