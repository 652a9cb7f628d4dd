package repair

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// steps are the ticks, each with its words wrapped beside it.
type steps struct {
	edit    func(what string, change func(*cases.Case))
	shown   []Step // without their ticks
	boxes   []*kit.Check
	quiet   bool
	content *fyne.Container
}

func newSteps(edit func(what string, change func(*cases.Case))) *steps {
	return &steps{edit: edit, content: container.NewVBox()}
}

func (s *steps) show(list []Step) {
	shown := slices.Clone(list)
	for i := range shown {
		shown[i].Done = false
	}
	if !slices.Equal(shown, s.shown) { // else the focus stays where it is
		s.make(shown)
	}
	s.quiet = true
	defer func() { s.quiet = false }()
	for i, step := range list {
		s.boxes[i].SetChecked(step.Done)
	}
}

func (s *steps) make(list []Step) {
	s.shown, s.boxes = list, s.boxes[:0]
	s.content.RemoveAll()
	for _, step := range list {
		box := kit.NewCheck("", func(on bool) {
			if !s.quiet {
				s.edit(step.Text, func(c *cases.Case) { c.Repair.StepsDone = kit.Ticked(c.Repair.StepsDone, step.ID, on) })
			}
		})
		s.boxes = append(s.boxes, box)
		s.content.Add(container.NewBorder(nil, nil, container.NewVBox(box), nil, kit.Paragraphs(kit.Span{Text: step.Text, Small: true})))
	}
}
