package checks

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report/picture"
)

// sheet is the form of one check, with what goes with it.
type sheet struct {
	v     *View
	kind  cases.TestKind
	nth   int
	units units.Set
	fan   cases.FanKind // that it is told for
	form  *kit.Form
	first fyne.Focusable
	more  []part // tables and the like

	which   *kit.Select
	tools   *fyne.Container // which of several, another one, and away with it
	none    *widget.Label   // in their place before one is done
	quiet   bool
	again   *kit.Button
	remove  *kit.Button
	result  *fyne.Container
	caution *kit.Prose // hangs on how hot the engine was
	curve   *kit.Plot  // of a check that has one
	scroll  *container.Scroll
	content fyne.CanvasObject
}

// part is a piece of a form that isn't a single field.
type part interface {
	show(t *cases.Test)
	leave()
}

func newSheet(v *View) *sheet {
	s := &sheet{v: v, caution: kit.Paragraphs(), kind: v.kind, nth: v.nth, units: v.units, fan: v.c.Loop.Fan, result: container.NewVBox()}
	info := v.info(v.kind)
	s.curve = kit.NewPlot(info.Title, v.say.Save)
	s.curve.Say("") // the form is called so
	s.form = kit.NewForm(func(what string, change func(*cases.Case)) { s.keep(info.Title+": "+what, change) })
	short, rest := s.fields()
	s.first = focusable(container.NewVBox(append(slices.Clone(short), rest...)...))
	rows := append(row(s.head(info), kit.CardOf("act", kit.L("window.checks.caution"), s.caution), container.NewGridWithColumns(2, append(short, s.stage())...)), rest...)
	right := container.NewVBox(s.result, s.curve.Content, guide(info)) // so the result is in sight whatever is typed
	s.scroll = container.NewVScroll(container.NewPadded(container.NewVBox(rows...)))
	s.content = container.New(kit.Shares{438, 283}, s.scroll, container.NewVScroll(container.NewPadded(right)))
	s.form.Chain(s.firstPart)
	return s
}

// firstPart is where the form goes on behind its fields: a table's first number.
func (s *sheet) firstPart() fyne.Focusable {
	for _, m := range s.more {
		if t, ok := m.(*table); ok {
			return t.rows[0].fields[0]
		}
	}
	return nil
}

// head names the check, and which one of several it is.
func (s *sheet) head(info Info) fyne.CanvasObject {
	s.which = kit.NewSelect(nil, func(string) {
		if i := s.which.SelectedIndex(); !s.quiet && i >= 0 {
			s.v.turn(i)
			kit.Focus(s.v.sheet.which) // this one is gone
		}
	})
	s.again = kit.NewQuiet(kit.L("window.checks.again"), theme.ContentAddIcon(), s.v.Again)
	s.remove = kit.NewQuiet(kit.L("window.checks.delete"), theme.DeleteIcon(), s.v.Delete)
	pills := container.NewHBox(kit.Pill(info.Minutes))
	if info.Needs != "" {
		pills.Add(kit.Pill(info.Needs))
	}
	title := kit.Heading(info.Title)
	title.Truncation = fyne.TextTruncateEllipsis
	s.tools = container.NewBorder(nil, nil, nil, container.NewHBox(s.again, s.remove), s.which)
	s.none = kit.Caption(kit.Capital(kit.L("window.checks.not-done")))
	// The line is there before there is anything to choose, so that nothing moves
	// under a hand that has begun to type and to click.
	line := kit.Roomy(fyne.NewSize(0, s.tools.MinSize().Height), container.NewStack(s.tools, s.none))
	return container.NewVBox(container.NewBorder(nil, nil, nil, container.NewCenter(pills), title), line)
}

func guide(info Info) fyne.CanvasObject {
	part := func(title, text string) fyne.CanvasObject {
		return container.New(kit.Tight{More: 2}, kit.Heading(title), kit.Paragraphs(kit.Span{Text: text}))
	}
	return container.NewVBox(part(kit.L("window.checks.what-to-do"), info.Text), part(kit.L("window.checks.accepted"), info.Accepts),
		part(kit.L("window.checks.not-proven"), info.NotProven),
		kit.Aside(kit.L("window.checks.maker-first")))
}

// show paints the check.
func (s *sheet) show() {
	at := s.v.place()
	c := s.v.c
	s.form.Show(c, s.v.units)
	kit.SetParagraphs(s.caution, kit.Span{Text: s.v.info(s.kind).Caution, Small: true})
	t := s.test(&c)
	for _, m := range s.more {
		m.show(t)
	}
	s.showWhich()
	kit.SetEnabled(at < len(s.v.c.Tests), s.remove)
	s.showResult(s.v.result(at))
	s.showCurve(t)
}

// showCurve draws the check's numbers, where they make a curve.
func (s *sheet) showCurve(t *cases.Test) {
	if lines, ok := picture.Test(t, say.English().With(s.v.units)); ok {
		s.curve.Draw(lines)
		return
	}
	s.curve.Draw(nil)
}

func (s *sheet) showWhich() {
	s.quiet = true
	defer func() { s.quiet = false }()
	var names []string
	for i, at := range s.v.tests(s.kind) {
		stage := s.v.c.Tests[at].Stage.Name()
		if stage == "" {
			stage = kit.L("window.checks.no-stage")
		}
		names = append(names, kit.L("window.checks.nth", i+1, joined(", ", stage, s.v.result(at).Says)))
	}
	if s.nth >= len(names) {
		names = append(names, kit.L("window.checks.nth", len(names)+1, kit.L("window.checks.not-done")))
	}
	done := len(s.v.tests(s.kind)) > 0
	kit.SetVisible(done, s.tools)
	kit.SetVisible(!done, s.none)
	s.which.SetOptions(names)
	s.which.SetSelectedIndex(s.nth)
}

func (s *sheet) leave() {
	s.form.Leave()
	for _, m := range s.more {
		m.leave()
	}
}

// test is the shown check in a case; one that isn't begun is put there.
func (s *sheet) test(c *cases.Case) *cases.Test {
	at := s.v.place()
	for len(c.Tests) <= at {
		c.Tests = append(c.Tests[:len(c.Tests):len(c.Tests)], cases.Test{Kind: s.kind, Stage: s.v.say.Stage(&s.v.c, s.kind)})
	}
	return &c.Tests[at]
}

// change edits the shown check.
func (s *sheet) change(what string, do func(*cases.Test)) {
	s.keep(s.kind.Name()+": "+what, func(c *cases.Case) { do(s.test(c)) })
}

// keep edits the check that the form is of. A form that is gone keeps nothing: the view has turned to another
// check, which its number would land in.
func (s *sheet) keep(what string, change func(*cases.Case)) {
	if s.v.sheet == s {
		s.v.keep(what, change)
	}
}

// focusable is the first thing in o that takes the focus.
func focusable(o fyne.CanvasObject) fyne.Focusable {
	if f, ok := o.(fyne.Focusable); ok {
		return f
	}
	if c, ok := o.(*fyne.Container); ok {
		for _, child := range c.Objects {
			if f := focusable(child); f != nil {
				return f
			}
		}
	}
	return nil
}
