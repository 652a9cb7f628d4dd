package window

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/dialog"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// parting asks before the open case is left with something typed that could not be kept: it would be gone,
// and may never have been seen to be refused.
type parting struct {
	at      bench.Bench
	screens *screens
	spent   func() float64 // minutes of checks of a practice that isn't over
	asked   dialog.Dialog  // nil: it isn't asked
}

// then leaves the case and does what that is for.
func (p *parting) then(does string, do func()) { p.leave(does, kit.L("window.parting.stay"), "", do) }

// notebook leaves the notebook, and with it a practice that is under way: nothing of it is kept.
func (p *parting) notebook(does string, do func()) {
	if spent := p.spent(); spent > 0 {
		p.leave(does, kit.L("window.parting.keep-on"), kit.L("window.parting.practice", spent), do)
		return
	}
	p.then(does, do)
}

// leave does what the case is left for once it is agreed to what is lost by it; asked already, it doesn't
// ask again.
func (p *parting) leave(does, stays, practice string, do func()) {
	if p.asked != nil {
		p.asked.Hide()
		do()
		return
	}
	p.at.Leave()
	p.at.Desk.Keep() // an error is told below by what it keeps from the disk
	var told []string
	if practice != "" {
		told = append(told, practice)
	}
	if lost := p.screens.lost(); len(lost) > 0 {
		told = append(told, kit.L("window.parting.lost", strings.Join(lost, "\n")))
	}
	if len(told) == 0 {
		do()
		return
	}
	had := p.at.Ask.Focused()
	p.asked = p.at.Ask.Choose(kit.L("window.parting.title"), asking.Words(strings.Join(told, "\n\n")),
		asking.Choice{Words: stays, Take: func() {}}, asking.Choice{Words: does, Take: do}) // neither stands out: one of them loses something
	p.at.Ask.ShowThen(p.asked, func() {
		p.asked = nil
		kit.Focus(had) // who goes back to correct it types on; what it is left for comes after, and takes the focus where it will
	})
}

// lost names what is typed on any screen of the open case and could not be kept, and of what is of a round, the round.
func (s *screens) lost() (out []string) {
	d := s.at.Desk
	if !d.Open {
		return nil
	}
	s.hosemap.Show() // it may have been left with other rounds
	inRound := func(i int, told string) {
		out = append(out, kit.L("window.parting.in-round", kit.RoundName(d.Case.Rounds[i], i), told))
	}
	d.EachSlip(func(round int, p diagram.Point, slip desk.Slip) {
		inRound(round, kit.L("window.kit.refused", say.PointName(p), slip.Text))
	})
	for _, a := range s.hosemap.Aside() {
		inRound(a.Round, a.Told)
	}
	slices.Sort(out)
	if what, why := d.Unkept(); why != nil {
		out = append(out, kit.L("window.parting.unkept", strings.Join(slices.Compact(what), ", "), why.Error()))
	}
	for tab, one := range s.all {
		for _, f := range kit.Refused(one.content) {
			switch {
			case f.Text == "":
			case tab == hoseMapTab && d.Round >= 0:
				inRound(d.Round, f.Told())
			default:
				out = append(out, f.Told())
			}
		}
	}
	return out
}

func (s *screens) refused() (out []*kit.Field) {
	for _, one := range s.all {
		out = append(out, kit.Refused(one.content)...)
	}
	return out
}

// retype lets what was refused be typed once more, on screens that show what is chosen now.
func (s *screens) retype() {
	for _, one := range s.all {
		refused := kit.Refused(one.content)
		if len(refused) > 0 && one.show != nil {
			one.show()
		}
		for _, f := range refused {
			f.Retype(f.Text)
		}
	}
}

// turn drops what was refused of another case: a screen that isn't looked at shows that case still.
func (s *screens) turn() {
	if id := s.at.Desk.Case.ID; id != s.of {
		s.of = id
		for _, f := range s.refused() {
			f.Forget()
		}
	}
}
