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
	Note          string  // what would have told more from there, or that it proved it; may be empty
}

// Reasons are what the evidence says for or against a cause.
type Reasons struct {
	Title string
	Lines []string
}

// Result is how a session ended.
type Result struct {
	Good     bool
	Head     string
	Score    []string // paragraphs that explain it
	Minutes  string
	Total    string // of the class that is through; "": none is
	Way      string // where the minutes went
	Reasons  []Reasons
	Steps    []Step
	Own      []Step // the program's way
	OwnWords string
	Lesson   string // Markdown
	Next     string // what the button says; empty: there is no next case
	CanOpen  bool   // the whole case can be looked at

	CanHandIn bool // a class is through, and its results can go to the trainer
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
	if d.Total != "" {
		spans = append(spans, kit.Span{Text: d.Total})
	}
	head := kit.Card(sign, d.Head, spans...)
	r.onward = kit.NewButton(kit.L("window.practice.done"), func() { call(r.view.OnStop) })
	buttons := container.NewHBox(r.onward)
	if d.Next != "" {
		next := kit.NewButtonWithIcon(d.Next, theme.NavigateNextIcon(), func() { call(r.view.OnNext) })
		next.Importance = widget.HighImportance
		buttons.Add(next)
		r.onward = next
	}
	if d.CanHandIn {
		buttons.Add(kit.NewButtonWithIcon(kit.L("window.practice.hand-in"), theme.DocumentSaveIcon(), func() { call(r.view.OnHandIn) }))
	}
	if d.CanOpen {
		buttons.Add(kit.NewQuiet(kit.L("window.practice.open-case"), nil, func() { call(r.view.OnOpenCase) }))
	}
	columns := container.New(kit.Shares{1, 1},
		container.NewVBox(kit.Heading(kit.L("window.practice.your-way")), kit.Aside(d.Way), steps(d.Steps)),
		container.NewVBox(kit.Heading(kit.L("window.practice.own-way")), kit.Aside(d.OwnWords), steps(d.Own)),
	)
	all := container.NewVBox(head, buttons, reasons(d.Reasons))
	if d.Lesson != "" {
		all.Add(lesson(d.Lesson))
	}
	all.Add(columns)
	r.body.Objects = []fyne.CanvasObject{all}
	r.body.Refresh()
}

// reasons stand side by side.
func reasons(list []Reasons) fyne.CanvasObject {
	row := container.New(kit.Shares{1, 1})
	for _, r := range list {
		box := container.New(kit.Tight{}, kit.Heading(r.Title))
		for _, line := range r.Lines {
			box.Add(kit.Paragraphs(kit.Span{Text: line, Small: true}))
		}
		row.Add(box)
	}
	return row
}

func steps(list []Step) fyne.CanvasObject {
	box := container.NewVBox()
	for _, s := range list {
		meter := kit.NewMeter()
		meter.Put(s.Truth)
		name := kit.Paragraphs(kit.Span{Text: s.Name, Small: true})
		line := container.New(kit.Tight{}, container.New(kit.Shares{162, 66, 76, 176}, name, kit.Small(s.Minutes), container.NewCenter(kit.Wide(72, meter)), kit.Aside(s.First)))
		if s.Note != "" {
			line.Add(kit.Aside(s.Note))
		}
		box.Add(line)
	}
	return box
}
