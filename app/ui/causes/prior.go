package causes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// prior is the choice of what is believed before the case.
type prior struct {
	odds    *kit.Radio
	learn   *kit.Check
	cases   *widget.Label
	quiet   bool
	content fyne.CanvasObject
}

func asMet() string { return kit.L("window.causes.as-met") }
func alike() string { return kit.L("window.causes.alike") }

func newPrior(flat, learn func(bool)) *prior {
	p := &prior{cases: kit.Small("")}
	p.odds = kit.NewRadio([]string{asMet(), alike()}, func(choice string) {
		if !p.quiet {
			flat(choice == alike())
		}
	})
	p.learn = kit.NewCheck(kit.L("window.causes.learn"), func(on bool) {
		if !p.quiet {
			learn(on)
		}
	})
	title := kit.Small(kit.L("window.causes.prior"))
	p.content = container.NewVBox(widget.NewSeparator(), container.New(kit.Tight{More: 2}, title, p.odds, p.learn, p.cases))
	return p
}

func (p *prior) show(d Data) {
	p.quiet = true
	defer func() { p.quiet = false }()
	p.odds.SetSelected(asMet())
	if d.Flat {
		p.odds.SetSelected(alike())
	}
	p.learn.SetChecked(d.Learn)
	p.cases.SetText(kit.L("window.causes.confirmed", d.Confirmed))
	kit.SetEnabled(d.Confirmed > 0, p.learn)
}
