package causes

import (
	"fyne.io/fyne/v2"

	"loopbook/app/desk"
)

// remembered are the odds that a person chose.
type remembered struct{ fyne.Preferences }

// odds are those of a desk, as they were chosen last.
func (p remembered) odds(o desk.Odds) desk.Odds {
	o.Flat = p.BoolWithFallback("all-causes-alike", false)
	o.Learn = desk.Learning(p.StringWithFallback("learn-from-notebook", string(desk.LearnUsual)))
	return o
}

func (p remembered) keep(o desk.Odds) {
	p.SetBool("all-causes-alike", o.Flat)
	p.SetString("learn-from-notebook", string(o.Learn))
}
