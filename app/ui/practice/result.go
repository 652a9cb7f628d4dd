package practice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Step is one thing that was bought with what the evidence said then.
type Step struct {
	Name, Minutes string
	Truth         float64 // how likely the truth was held, 0 to 1
	First         string  // what was held likeliest
}

// Result is how a session ended.
type Result struct {
	Good     bool
	Head     string
	Score    []string // paragraphs that explain it
	Minutes  string
	Steps    []Step
	Own      []Step // the program's way
	OwnWords string
	Lesson   string // Markdown
	Next     string // what the button says; empty: there is no next case
	CanOpen  bool   // the whole case can be looked at
}

// result is the screen after an answer.
type result struct {
	view    *View
	onward  *kit.Button // what Enter presses
	body    *fyne.Container
	content fyne.CanvasObject
}

func newResult(v *View) *result {
	r := &result{view: v, body: container.NewStack()}
	r.content = container.NewVScroll(container.NewPadded(r.body))
	return r
}

func (r *result) show(d Result) {
	sign := "look"
	if d.Good {
		sign = "fine"
	}
	var spans []kit.Span
	for _, p := range d.Score {
		spans = append(spans, kit.Span{Text: p})
	}
	spans = append(spans, kit.Span{Text: d.Minutes})
	head := kit.Card(sign, d.Head, spans...)
	r.onward = kit.NewButton(kit.L("window.practice.done"), func() { call(r.view.OnStop) })
	buttons := container.NewHBox(r.onward)
	if d.Next != "" {
		next := kit.NewButtonWithIcon(d.Next, theme.NavigateNextIcon(), func() { call(r.view.OnNext) })
		next.Importance = widget.HighImportance
		buttons.Add(next)
		r.onward = next
	}
	if d.CanOpen {
		open := kit.NewButton(kit.L("window.practice.open-case"), func() { call(r.view.OnOpenCase) })
		open.Importance = widget.LowImportance
		buttons.Add(open)
	}
	columns := container.New(kit.Shares{1, 1},
		container.NewVBox(kit.Heading(kit.L("window.practice.your-way")), steps(d.Steps)),
		container.NewVBox(kit.Heading(kit.L("window.practice.own-way")), kit.Paragraphs(kit.Span{Text: d.OwnWords, Small: true, Color: theme.ColorNamePlaceHolder}), steps(d.Own)),
	)
	all := container.NewVBox(head, buttons)
	if d.Lesson != "" {
		lesson := widget.NewRichTextFromMarkdown(d.Lesson)
		lesson.Wrapping = fyne.TextWrapWord
		all.Add(kit.Section(kit.L("window.practice.lesson"), lesson))
	}
	all.Add(columns)
	r.body.Objects = []fyne.CanvasObject{all}
	r.body.Refresh()
}

func steps(list []Step) fyne.CanvasObject {
	box := container.NewVBox()
	for _, s := range list {
		meter := kit.NewMeter()
		meter.Put(s.Truth)
		name := kit.Paragraphs(kit.Span{Text: s.Name, Small: true})
		first := kit.Paragraphs(kit.Span{Text: s.First, Small: true, Color: theme.ColorNamePlaceHolder})
		box.Add(container.New(kit.Shares{180, 48, 76, 176}, name, kit.Small(s.Minutes), container.NewCenter(kit.Wide(72, meter)), first))
	}
	return box
}
