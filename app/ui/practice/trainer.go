package practice

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// trainers is the right half: classes are made, ordered and looked through.
func (s *start) trainers(d Start) fyne.CanvasObject {
	v := s.view
	name := kit.NewField(kit.L("window.practice.class-name"), nil)
	s.build = kit.NewButton("", func() {
		if strings.TrimSpace(name.Text) != "" {
			tell(v.OnMake, name.Text)
		}
	})
	name.OnSubmitted = func(string) { s.build.OnTapped() } // a name is all that was asked for
	s.offer(d.Found)
	retire := kit.NewCheck(kit.L("window.practice.retire"), nil)
	retire.SetChecked(d.Retired)
	retire.OnChanged = func(on bool) { tell(v.OnRetire, on) }
	if d.Open == "" {
		retire.Disable()
	}
	box := container.NewVBox(kit.Section(kit.L("window.practice.trainer"),
		kit.Aside(kit.L("window.practice.make-text")),
		container.NewBorder(nil, nil, nil, s.build, name), retire))
	if d.Lesson != "" {
		box.Add(lesson(d.Lesson))
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
	kit.SetEnabled(found > 0, s.build)
}

// chosen is which class is looked at, with its cases in their order.
func (s *start) chosen(d Start) (choose *kit.Select, list *fyne.Container) {
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
			tell(s.view.OnChoose, "")
			return
		}
		tell(s.view.OnChoose, d.Classes[i-1].Name)
	}
	list = container.NewVBox()
	if at > 0 {
		s.order(list, d.Classes[at-1], d.Why == "")
	}
	return choose, list
}

// order fills list with a class's cases in their order, and what can be done with it.
func (s *start) order(list *fyne.Container, c Class, canAdd bool) {
	v := s.view
	list.Add(kit.Heading(kit.L("window.practice.order")))
	for i, title := range c.Cases {
		up := kit.NewQuiet("", theme.MoveUpIcon(), func() { move(v.OnMove, i, -1) })
		out := kit.NewQuiet("", theme.ContentRemoveIcon(), func() { move(v.OnMove, i, 0) })
		if i == 0 {
			up.Disable()
		}
		line := container.New(kit.Tight{}, container.NewBorder(nil, nil, nil, container.NewHBox(up, out), kit.Small(kit.L("window.practice.nth", i+1, title))))
		if i < len(c.Told) && c.Told[i] != "" {
			line.Add(kit.Aside(c.Told[i]))
		}
		list.Add(line)
	}
	add := kit.NewQuiet(kit.L("window.practice.add"), theme.ContentAddIcon(), func() { call(v.OnAdd) })
	if !canAdd || c.HasOpen {
		add.Disable()
	}
	list.Add(container.NewHBox(add))
	buttons := container.NewHBox(
		kit.NewQuiet(kit.L("window.practice.give"), theme.DocumentSaveIcon(), func() { tell(v.OnGive, c.Name) }),
		kit.NewQuiet(kit.L("window.practice.forget"), nil, func() { tell(v.OnForget, c.Name) }),
	)
	if c.Sealed {
		buttons.Add(kit.NewQuiet(kit.L("window.practice.unseal"), nil, func() { tell(v.OnUnseal, c.Name) }))
	}
	list.Add(buttons)
}

func (s *start) results(d Start) fyne.CanvasObject {
	take := kit.NewQuiet(kit.L("window.practice.take-results"), theme.DownloadIcon(), func() { call(s.view.OnTakeResults) })
	if len(d.Results) == 0 {
		return kit.Section(kit.L("window.practice.results"), kit.Aside(kit.L("window.practice.no-results")), container.NewHBox(take))
	}
	box := container.NewVBox()
	line := func(cells ...fyne.CanvasObject) { box.Add(container.New(kit.Shares{150, 70, 70, 90, 120}, cells...)) }
	line(kit.Small(kit.L("window.practice.name")), kit.Small(kit.L("window.practice.cases")), kit.Small(kit.L("window.practice.right")), kit.Small(kit.L("window.practice.score")), kit.Small(kit.L("window.practice.minutes")))
	for _, r := range d.Results {
		line(widget.NewLabel(r.Trainee), widget.NewLabel(r.Cases), widget.NewLabel(r.Right), widget.NewLabel(r.Score), widget.NewLabel(r.Minutes))
	}
	box.Add(container.NewHBox(kit.NewQuiet(kit.L("window.practice.export"), theme.DocumentSaveIcon(), func() { call(s.view.OnExport) }), take))
	return kit.Section(kit.L("window.practice.results"), box)
}

func move(do func(at, by int), at, by int) {
	if do != nil {
		do(at, by)
	}
}
