package checks

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// topUp works out what to drain and what to fill. What is wanted is asked for
// here and not kept: it is no finding of the case.
type topUp struct {
	s          *sheet
	want, with float64
	says       *kit.Prose
}

func (s *sheet) topUp() fyne.CanvasObject {
	t := &topUp{s: s, want: 50, with: 100, says: kit.Paragraphs()}
	s.more = append(s.more, t)
	return container.NewVBox(kit.Heading(kit.L("window.checks.topping-up")),
		two(t.percent(kit.L("window.checks.wanted"), &t.want), t.percent(kit.L("window.checks.fill-with"), &t.with)),
		t.says)
}

func (t *topUp) percent(label string, at *float64) fyne.CanvasObject {
	var f *kit.Field
	f = kit.NewField("", func(text string) {
		v, err := kit.Between(units.Number, 0, 100, kit.Plain[float64])(text)
		f.Refuse(err)
		if err == nil {
			*at = v
			t.show(nil)
		}
	})
	f.Put(kit.Plain(*at))
	return kit.Labelled(label, f)
}

// show works it out anew.
func (t *topUp) show(*cases.Test) {
	c := t.s.v.c
	kit.SetParagraphs(t.says, kit.Span{Text: t.s.v.say.TopUp(&c, t.s.test(&c), t.want, t.with, t.s.v.units)})
}

func (t *topUp) leave() {}
