package practice

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Class is a list of cases with what came of it.
type Class struct {
	Name    string
	Cases   []string       // their titles, in their order
	Told    []string       // how each was answered; "": by nobody
	Done    map[string]int // by whom how many of it are done, of those that have begun it and aren't through
	HasOpen bool           // the open case is among them
	Sealed  bool           // some of it stays shut until it was answered
}

// Row is a trainee's line: how many cases, how they were answered.
type Row struct{ Trainee, Cases, Right, Score, Minutes string }

// Start is what can be practised.
type Start struct {
	Open    string // the open case's title; empty: none can be practised
	Why     string // why the open one can't be
	Retired bool   // the open case is out of practice
	Lesson  string // of the open case, Markdown
	Classes []Class
	Chosen  string // class
	Results []Row  // of the chosen class, or of all
	Found   int    // cases that the list shows and that can be practised
}

// Difficulty of a simulated case.
type Difficulty string

// The difficulties, by how plainly the evidence speaks.
const (
	Easy  Difficulty = "easy"
	Usual Difficulty = "usual"
	Hard  Difficulty = "hard"
)

// Difficulties in their order.
func Difficulties() []Difficulty { return []Difficulty{Easy, Usual, Hard} }

// start is the screen on which a case is chosen, and where a trainer keeps classes.
type start struct {
	view    *View
	trainee *kit.Field
	trainer bool // the trainer's half is in sight
	build   *kit.Button
	begins  []func() // say of each class how far the trainee is
	body    *fyne.Container
	content fyne.CanvasObject
}

func newStart(v *View) *start {
	s := &start{view: v, body: container.NewStack(), build: kit.NewButton("", nil)}
	s.trainee = kit.NewField(kit.L("window.practice.trainee"), func(string) { s.sayFar() })
	s.content = container.NewVScroll(container.NewPadded(s.body))
	return s
}

func (s *start) show(d Start) {
	right := container.NewVBox(s.door())
	if s.trainer {
		right.Add(s.trainers(d))
	}
	s.body.Objects = []fyne.CanvasObject{container.New(kit.Shares{480, 520}, s.trainees(d), right)}
	s.body.Refresh()
}

// door leads to the trainer's half, which tells what the cases turned out to be,
// and out of it.
func (s *start) door() fyne.CanvasObject {
	words := kit.L("window.practice.to-trainer")
	if s.trainer {
		words = kit.L("window.practice.from-trainer")
	}
	door := kit.NewButton(words, func() {
		s.trainer = !s.trainer
		if s.view.OnTrainer != nil {
			s.view.OnTrainer(s.trainer)
		}
	})
	door.Importance = widget.LowImportance
	return container.NewPadded(container.NewHBox(door))
}

// trainees is the left half: who practises, and on what.
func (s *start) trainees(d Start) fyne.CanvasObject {
	v := s.view
	own := kit.NewButton(kit.L("window.practice.this-case"), func() { call(v.OnOpenOne) })
	words := kit.L("window.practice.open-one") // its title would tell too much
	if d.Why != "" {
		own.Disable()
		words = d.Why
	}
	box := container.NewVBox(
		kit.Section(kit.L("window.practice.who"), s.trainee),
		kit.Section(kit.L("window.practice.on-open"), kit.Paragraphs(kit.Span{Text: words, Small: true, Color: theme.ColorNamePlaceHolder}), container.NewHBox(own)),
	)
	buttons := container.NewHBox()
	for _, how := range Difficulties() {
		buttons.Add(kit.NewButton(kit.L("window.practice.simulated-"+string(how)), func() {
			if v.OnSimulated != nil {
				v.OnSimulated(how)
			}
		}))
	}
	box.Add(kit.Section(kit.L("window.practice.on-simulated"), kit.Paragraphs(kit.Span{Text: kit.L("window.practice.simulated-text"), Small: true, Color: theme.ColorNamePlaceHolder}), buttons))
	box.Add(kit.Section(kit.L("window.practice.on-class"), s.classes(d)))
	return container.NewPadded(box)
}

// classes are the class sets, each with a button to go through it.
func (s *start) classes(d Start) fyne.CanvasObject {
	box := container.NewVBox()
	if len(d.Classes) == 0 {
		box.Add(kit.Paragraphs(kit.Span{Text: kit.L("window.practice.no-class"), Small: true, Color: theme.ColorNamePlaceHolder}))
	}
	s.begins = nil
	for _, c := range d.Classes {
		begin, name := kit.NewButton("", func() { tell(s.view.OnClass, c.Name) }), widget.NewLabel("")
		s.begins = append(s.begins, func() {
			begin.SetText(kit.L("window.practice.begin"))
			name.SetText(kit.L("window.practice.class", c.Name, len(c.Cases)))
			if done := c.Done[s.view.Trainee()]; done > 0 {
				begin.SetText(kit.L("window.practice.go-on"))
				name.SetText(kit.L("window.practice.class-done", c.Name, done, len(c.Cases)))
			}
		})
		box.Add(container.NewBorder(nil, nil, nil, begin, name))
	}
	s.sayFar()
	return box
}

// sayFar says how far who practises is through each class: they go on where they left.
func (s *start) sayFar() {
	for _, say := range s.begins {
		say()
	}
}

// trainers is the right half: classes are made, ordered and looked through.
func (s *start) trainers(d Start) fyne.CanvasObject {
	v := s.view
	name := kit.NewField(kit.L("window.practice.class-name"), nil)
	s.build = kit.NewButton("", func() {
		if v.OnMake != nil && strings.TrimSpace(name.Text) != "" {
			v.OnMake(name.Text)
		}
	})
	name.OnSubmitted = func(string) { s.build.OnTapped() } // a name is all that was asked for
	s.offer(d.Found)
	retire := kit.NewCheck(kit.L("window.practice.retire"), nil)
	retire.SetChecked(d.Retired)
	retire.OnChanged = func(on bool) {
		if v.OnRetire != nil {
			v.OnRetire(on)
		}
	}
	if d.Open == "" {
		retire.Disable()
	}
	box := container.NewVBox(kit.Section(kit.L("window.practice.trainer"),
		kit.Paragraphs(kit.Span{Text: kit.L("window.practice.make-text"), Small: true, Color: theme.ColorNamePlaceHolder}),
		container.NewBorder(nil, nil, nil, s.build, name), retire))
	if d.Lesson != "" {
		lesson := widget.NewRichTextFromMarkdown(d.Lesson)
		lesson.Wrapping = fyne.TextWrapWord
		box.Add(kit.Section(kit.L("window.practice.lesson"), lesson))
	}
	choose, cases := s.chosen(d)
	box.Add(choose)
	box.Add(s.results(d))
	box.Add(cases)
	return container.NewPadded(box)
}

// offer says of how many cases a class set can be made.
func (s *start) offer(found int) {
	s.build.SetText(kit.L("window.practice.make", found))
	if found == 0 {
		s.build.Disable()
	} else {
		s.build.Enable()
	}
}

// chosen is which class is looked at, with its cases in their order.
func (s *start) chosen(d Start) (choose *kit.Select, list *fyne.Container) {
	v := s.view
	names := []string{kit.L("window.practice.all")}
	at := 0
	for i, c := range d.Classes {
		names = append(names, c.Name)
		if c.Name == d.Chosen {
			at = i + 1
		}
	}
	choose = kit.NewSelect(names, nil)
	choose.SetSelectedIndex(at)
	choose.OnChanged = func(string) {
		i := choose.SelectedIndex()
		if i == 0 {
			tell(v.OnChoose, "")
			return
		}
		tell(v.OnChoose, d.Classes[i-1].Name)
	}
	list = container.NewVBox()
	if at == 0 {
		return choose, list
	}
	list.Add(kit.Heading(kit.L("window.practice.order")))
	class := d.Classes[at-1]
	for i, title := range class.Cases {
		up := kit.NewButtonWithIcon("", theme.MoveUpIcon(), func() { move(v.OnMove, i, -1) })
		out := kit.NewButtonWithIcon("", theme.ContentRemoveIcon(), func() { move(v.OnMove, i, 0) })
		up.Importance, out.Importance = widget.LowImportance, widget.LowImportance
		if i == 0 {
			up.Disable()
		}
		line := container.New(kit.Tight{}, container.NewBorder(nil, nil, nil, container.NewHBox(up, out), kit.Small(kit.L("window.practice.nth", i+1, title))))
		if i < len(class.Told) && class.Told[i] != "" {
			line.Add(aside(class.Told[i]))
		}
		list.Add(line)
	}
	drop := kit.NewButton(kit.L("window.practice.forget"), func() { tell(v.OnForget, d.Chosen) })
	give := kit.NewButtonWithIcon(kit.L("window.practice.give"), theme.DocumentSaveIcon(), func() { tell(v.OnGive, d.Chosen) })
	drop.Importance, give.Importance = widget.LowImportance, widget.LowImportance
	add := kit.NewButtonWithIcon(kit.L("window.practice.add"), theme.ContentAddIcon(), func() { call(v.OnAdd) })
	add.Importance = widget.LowImportance
	if d.Why != "" || class.HasOpen {
		add.Disable()
	}
	list.Add(container.NewHBox(add))
	buttons := container.NewHBox(give, drop)
	if class.Sealed {
		open := kit.NewButton(kit.L("window.practice.unseal"), func() { tell(v.OnUnseal, d.Chosen) })
		open.Importance = widget.LowImportance
		buttons.Add(open)
	}
	list.Add(buttons)
	return choose, list
}

func (s *start) results(d Start) fyne.CanvasObject {
	box := container.NewVBox()
	widths := kit.Shares{150, 70, 70, 90, 120}
	line := func(cells ...fyne.CanvasObject) { box.Add(container.New(widths, cells...)) }
	take := kit.NewButtonWithIcon(kit.L("window.practice.take-results"), theme.DownloadIcon(), func() { call(s.view.OnTakeResults) })
	take.Importance = widget.LowImportance
	if len(d.Results) == 0 {
		return kit.Section(kit.L("window.practice.results"), kit.Paragraphs(kit.Span{Text: kit.L("window.practice.no-results"), Small: true, Color: theme.ColorNamePlaceHolder}), container.NewHBox(take))
	}
	line(kit.Small(kit.L("window.practice.name")), kit.Small(kit.L("window.practice.cases")), kit.Small(kit.L("window.practice.right")), kit.Small(kit.L("window.practice.score")), kit.Small(kit.L("window.practice.minutes")))
	for _, r := range d.Results {
		line(widget.NewLabel(r.Trainee), widget.NewLabel(r.Cases), widget.NewLabel(r.Right), widget.NewLabel(r.Score), widget.NewLabel(r.Minutes))
	}
	export := kit.NewButtonWithIcon(kit.L("window.practice.export"), theme.DocumentSaveIcon(), func() { call(s.view.OnExport) })
	export.Importance = widget.LowImportance
	box.Add(container.NewHBox(export, take))
	return kit.Section(kit.L("window.practice.results"), box)
}

func tell(do func(string), word string) {
	if do != nil {
		do(word)
	}
}

func move(do func(at, by int), at, by int) {
	if do != nil {
		do(at, by)
	}
}
