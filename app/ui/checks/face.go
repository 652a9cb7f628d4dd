package checks

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report/picture"
)

// faceLines are the lines of the field that can be seen without scrolling.
const faceLines = 6

// face is the form of a face scan: a grid as text, and its picture.
type face struct {
	s       *sheet
	field   *kit.Field
	picture *kit.Plot
}

func (s *sheet) face() fyne.CanvasObject {
	f := &face{s: s, picture: kit.NewPlot(kit.Capital(s.kind.Name()), s.v.say.Save)}
	f.field = kit.NewArea("", faceLines, func(text string) {
		rows, err := parseGrid(text, s.v.units)
		f.field.Refuse(err)
		if err == nil {
			s.change(kit.L("window.checks.temperatures"), func(t *cases.Test) { t.ShownC = rows })
		}
	})
	s.more = append(s.more, f)
	labelled := kit.Labelled("", f.field)
	f.title(s.v.units)
	return container.NewVBox(labelled,
		note(kit.L("window.checks.face-note")),
		f.picture.Content)
}

// title names the unit, and shows how a grid is written in it.
func (f *face) title(u units.Set) {
	f.field.Title(kit.L("window.checks.face", string(u.Temperature)))
	f.field.SetPlaceHolder(gridText([][]float64{{85, 84, 85}, {70, 71, 70}, {55, 55, 56}}, u))
}

func (f *face) show(t *cases.Test) {
	f.title(f.s.v.units)
	f.field.Put(gridText(t.ShownC, f.s.v.units))
	if map_, ok := picture.FaceScan(t, say.English().With(f.s.v.units)); ok {
		f.picture.Draw(map_)
		return
	}
	f.picture.Draw(nil)
}

func (f *face) leave() { f.field.Leave() }
