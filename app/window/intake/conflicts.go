package intake

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
	"loopbook/app/window/words"
	"loopbook/cases"
)

// ask shows the first of the conflicts that are left side by side; the
// choice leads to the next, or is the same for all that are left. Escape leaves the
// notebook as it is.
func (i *Intake) ask(left []cases.Met, of int) {
	if len(left) == 0 {
		return
	}
	m := left[0]
	differ, same, err := words.Differences(m.Mine, m.Theirs.Case, i.at.Desk.Units)
	if err != nil {
		i.at.Ask.Tell(err)
		return
	}
	title := kit.L("window.share.conflict", words.Title(m.Mine))
	if of > 1 {
		title = kit.L("window.share.conflict-of", of-len(left)+1, of, words.Title(m.Mine))
	}
	all := kit.NewCheck(kit.L("window.share.conflict-all", len(left)-1), nil)
	if len(left) == 1 {
		all.Hide()
	}
	content := container.NewBorder(container.NewVBox(kit.Paragraphs(kit.Span{Text: kit.L("window.share.conflict-text"), Small: true}), all), nil, nil, nil,
		compare.New(kit.L("window.share.mine"), kit.L("window.share.theirs"), differ, same))
	choice := func(words string, c cases.Choice) asking.Choice {
		return asking.Choice{Words: words, Take: func() {
			n := 1
			if all.Checked {
				n = len(left)
			}
			i.settle(left[:n], c, func() { i.ask(left[n:], of) })
		}}
	}
	d := i.at.Ask.Choose(title, content,
		choice(kit.L("window.share.keep-mine"), cases.KeepMine), choice(kit.L("window.share.take-theirs"), cases.TakeTheirs), choice(kit.L("window.share.keep-both"), cases.KeepBoth))
	d.Resize(i.at.Ask.Size().Subtract(fyne.NewSize(160, 120)))
	i.at.Ask.Show(d)
}

// settle ends conflicts by one choice, apart from the window, and opens the last of them.
func (i *Intake) settle(list []cases.Met, c cases.Choice, then func()) {
	store := i.at.Desk.Store
	busy := i.at.Ask.Busy(i.at.Ctx, kit.L("window.share.settling", len(list)))
	i.at.Start(func() {
		var id string
		var err error
		for n := 0; n < len(list) && err == nil && busy.Ctx.Err() == nil; n++ {
			id, err = store.Resolve(busy.Ctx, list[n].Theirs, c, "imported")
		}
		fyne.Do(func() {
			if stopped := busy.Done(); err != nil && !stopped {
				i.at.Ask.Tell(err)
				return
			}
			if id != "" { // else it was stopped before the first
				i.at.Desk.Load(id)
				i.at.Desk.Kept()
			}
			then()
		})
	})
}
