package hosemap

import (
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

// Aside tells of all of it, in no order.
func (v *View) Aside() (out []Aside) {
	v.aside.Each(func(round int, list []Aside) {
		for _, a := range list {
			a.Round = round
			out = append(out, a)
		}
	})
	return out
}

// turn puts aside what was refused of the round that was shown, if another is to be shown, and lets all of it go with its
// rounds. That of another case is dropped. It reports whether another round is to be shown.
func (v *View) turn(to Data) (turned bool) {
	was := v.data
	other := was.Case.ID != to.Case.ID
	turned = other || was.Round != to.Round
	if !turned && len(was.Case.Rounds) != len(to.Case.Rounds) {
		where := cases.Where(was.Case, to.Case)
		turned = was.Round < 0 || was.Round >= len(where) || where[was.Round] != to.Round
	}
	if turned {
		v.putAside(was.Round)
		v.conditions.forget()
		v.place.forget()
	}
	if other {
		v.aside = cases.ByRound[[]Aside]{}
	} else {
		v.aside.Move(was.Case, to.Case)
	}
	return turned
}

func (v *View) putAside(round int) {
	list := v.aside.Of(round)
	for _, f := range append(kit.Refused(v.conditions.content), kit.Refused(v.place.content)...) {
		a := Aside{Told: f.Told(), field: f, text: f.Text}
		if f == v.place.number {
			a.at = v.place.slipAt
		}
		list = append(list, a)
	}
	if len(list) > 0 {
		v.aside.Put(round, list)
	}
}

// takeUp lets what was put aside of the shown round stand in its fields again, to be mended.
func (v *View) takeUp() {
	mine := v.aside.Of(v.data.Round)
	v.aside.Drop(v.data.Round)
	for _, a := range mine {
		if a.field == v.place.number {
			v.place.slipAt = a.at
		}
		a.field.Retype(a.text)
	}
}

// unkept reports whether something of a round that isn't shown could not be kept.
func (v *View) unkept(round int) bool {
	return round != v.data.Round && (v.data.Slipped[round] || len(v.aside.Of(round)) > 0)
}
