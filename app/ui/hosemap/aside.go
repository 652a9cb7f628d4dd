package hosemap

import (
	"slices"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
)

// Aside is what was typed over the drawing in a round that isn't shown, and could not be kept.
type Aside struct {
	Round int
	Told  string // with its field's name

	field *kit.Field
	text  string
	at    diagram.Point // whose surface it is; "": of none
}

// Aside tells of all of it.
func (v *View) Aside() []Aside { return v.aside }

// turn puts aside what was refused of the round that was shown, if another is to be shown. That of another case, or
// of rounds that don't stand where they stood, is dropped. It reports whether another is to be shown.
func (v *View) turn(to Data) (turned bool) {
	was := v.data
	other := was.Case.ID != to.Case.ID
	turned = other || was.Round != to.Round
	if turned {
		v.putAside(was.Round)
	}
	stand := len(was.Case.Rounds)
	if !other && stand != len(to.Case.Rounds) {
		stand = cases.Standing(was.Case, to.Case)
	}
	gone := func(round int) bool { return other || round >= stand }
	v.aside = slices.DeleteFunc(v.aside, func(a Aside) bool { return gone(a.Round) })
	if turned || gone(was.Round) {
		v.conditions.forget()
		v.place.forget()
	}
	return turned
}

func (v *View) putAside(round int) {
	for _, f := range append(kit.Refused(v.conditions.content), kit.Refused(v.place.content)...) {
		a := Aside{Round: round, Told: f.Told(), field: f, text: f.Text}
		if f == v.place.number {
			a.at = v.place.slipAt
		}
		v.aside = append(v.aside, a)
	}
}

// takeUp lets what was put aside of the shown round stand in its fields again, to be mended.
func (v *View) takeUp() {
	var mine []Aside
	v.aside = slices.DeleteFunc(v.aside, func(a Aside) bool {
		if a.Round != v.data.Round {
			return false
		}
		mine = append(mine, a)
		return true
	})
	for _, a := range mine {
		if a.field == v.place.number {
			v.place.slipAt = a.at
		}
		a.field.Retype(a.text)
	}
}

// unkept reports whether something of a round that isn't shown could not be kept.
func (v *View) unkept(round int) bool {
	if round == v.data.Round {
		return false
	}
	return v.data.Slipped[round] || slices.ContainsFunc(v.aside, func(a Aside) bool { return a.Round == round })
}
