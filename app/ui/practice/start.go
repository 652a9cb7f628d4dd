package practice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Class is a list of cases with what came of it.
type Class struct {
	Name    string
	Cases   []string       // their titles, in their order
	Of      int            // how many of them can be practised
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
	return container.NewPadded(container.NewHBox(kit.NewQuiet(words, nil, func() {
		s.trainer = !s.trainer
		tell(s.view.OnTrainer, s.trainer)
	})))
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
		kit.Section(kit.L("window.practice.on-open"), kit.Aside(words), container.NewHBox(own)),
	)
	buttons := container.NewHBox()
	for _, how := range Difficulties() {
		buttons.Add(kit.NewButton(kit.L("window.practice.simulated-"+string(how)), func() { tell(v.OnSimulated, how) }))
	}
	box.Add(kit.Section(kit.L("window.practice.on-simulated"), kit.Aside(kit.L("window.practice.simulated-text")), buttons))
	box.Add(kit.Section(kit.L("window.practice.on-class"), s.classes(d)))
	return container.NewPadded(box)
}

// classes are the class sets, each with a button to go through it.
func (s *start) classes(d Start) fyne.CanvasObject {
	box := container.NewVBox()
	if len(d.Classes) == 0 {
		box.Add(kit.Aside(kit.L("window.practice.no-class")))
	}
	s.begins = nil
	for _, c := range d.Classes {
		begin, name := kit.NewButton("", func() { tell(s.view.OnClass, c.Name) }), widget.NewLabel("")
		s.begins = append(s.begins, func() {
			begin.SetText(kit.L("window.practice.begin"))
			name.SetText(kit.L("window.practice.class", c.Name, c.Of))
			if done := c.Done[s.view.Trainee()]; done > 0 {
				begin.SetText(kit.L("window.practice.go-on"))
				name.SetText(kit.L("window.practice.class-done", c.Name, done, c.Of))
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
