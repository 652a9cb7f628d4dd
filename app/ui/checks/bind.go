package checks

import (
	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
)

func (s *sheet) temp(label string, at func(*cases.Test) **diagram.Celsius) fyne.CanvasObject {
	return s.form.Temp(label, func(c *cases.Case) **diagram.Celsius { return at(s.test(c)) })
}

func (s *sheet) press(label string, at func(*cases.Test) **diagram.KPa) fyne.CanvasObject {
	return s.form.Press(label, func(c *cases.Case) **diagram.KPa { return at(s.test(c)) })
}

func (s *sheet) number(label string, parse func(string) (float64, error), low, high float64, at func(*cases.Test) **float64) fyne.CanvasObject {
	return kit.Number(s.form, label, parse, low, high, func(c *cases.Case) **float64 { return at(s.test(c)) })
}

func (s *sheet) stage() fyne.CanvasObject {
	return pick(s, kit.L("window.checks.done-stage"), cases.Words[cases.Stage](), cases.Stage.Name, func(t *cases.Test) *cases.Stage { return &t.Stage })
}

// answer is yes, no, or "" for not known.
type answer string

const (
	yes answer = "yes"
	no  answer = "no"
)

// yesNo binds a yes or no, in words that say what each means here.
func (s *sheet) yesNo(label, ifYes, ifNo string, at func(*cases.Test) **bool) fyne.CanvasObject {
	choice := kit.NewChoice([]answer{yes, no}, func(a answer) string {
		if a == yes {
			return ifYes
		}
		return ifNo
	}, func(a answer) {
		s.change(label, func(t *cases.Test) { *at(t) = truth(a) })
	})
	s.form.Bound(func(c cases.Case) { choice.Put(said(*at(s.test(&c)))) })
	return kit.Labelled(label, choice.Select)
}

// pick binds a word of the format.
func pick[T ~string](s *sheet, label string, words []T, name func(T) string, at func(*cases.Test) *T) fyne.CanvasObject {
	return kit.Pick(s.form, label, words, name, func(c *cases.Case) *T { return at(s.test(c)) })
}

func truth(a answer) *bool {
	switch a {
	case yes, no:
		v := a == yes
		return &v
	}
	return nil
}

func said(v *bool) answer {
	switch {
	case v == nil:
		return ""
	case *v:
		return yes
	}
	return no
}
