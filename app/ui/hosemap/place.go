package hosemap

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

type celsius = diagram.Celsius

// place is the line about the point that has, or last had, the caret: what
// surface the gun met, whether it can be reached; and how the gun is set.
type place struct {
	view      *View
	name      *widget.Label
	surface   *kit.Choice[string]
	number    *kit.Field
	reach     *kit.Button
	gun       *kit.Field
	reflected *kit.Field
	point     diagram.Point
	met       cases.Surface // there
	slipAt    diagram.Point // whose emissivity was refused and is still to be mended
	units     units.Set
	content   *fyne.Container
}

func newPlace(v *View) *place {
	p := &place{view: v, name: widget.NewLabel("")}
	p.name.TextStyle.Bold, p.name.Truncation = true, fyne.TextTruncateEllipsis
	p.surface = kit.NewChoice(cases.Surfaces(), surfaceName, p.pickSurface)
	p.surface.PlaceHolder = kit.L("window.hosemap.surface-hint") // with a question mark, as the air that is taken for one
	p.number = kit.NewField(kit.L("window.hosemap.emissivity-hint"), p.setEmissivity)
	p.reach = kit.NewQuiet(kit.L("window.hosemap.cant-reach"), theme.CancelIcon(), p.cantReach)
	p.number.OnReverted = func() {
		p.slipAt = ""
		p.showEmissivity()
	}
	p.gun = kit.NewField("0.95", p.setGun)
	p.reflected = kit.NewField(kit.L("window.hosemap.around"), p.setReflected)
	p.gun.Title(kit.L("window.hosemap.gun-set"))
	p.reflected.Title(kit.L("window.hosemap.reflected"))
	p.content = container.New(kit.Shares{155, 103, 59, 110, 76, 46, 68, 59},
		p.name, p.surface.Select, p.number, p.reach,
		trailing(kit.L("window.hosemap.gun-set")), p.gun, trailing(kit.L("window.hosemap.reflected")), p.reflected)
	return p
}

func trailing(text string) *widget.Label {
	l := kit.Small(text)
	l.Alignment = fyne.TextAlignTrailing
	return l
}

func surfaceName(word string) string { return cases.Surface{Word: word}.Text().String() }

func (p *place) show(point diagram.Point, r *cases.Round, u units.Set) {
	p.point, p.units = point, u
	if r == nil {
		p.content.Hide()
		return
	}
	p.content.Show()
	p.name.SetText(kit.L("window.hosemap.tab"))
	p.met = cases.Surface{}
	if point != "" {
		p.name.SetText(say.PointName(point).String())
		if at := r.Reading(point); at != nil {
			p.met = at.Surface
		}
	}
	p.enable(point != "" && !point.Air(), point != "")
	p.surface.Put(p.met.Word)
	p.showEmissivity()
	p.gun.Put(kit.Written(r.Gun.Emissivity, kit.Plain[float64]))
	p.reflected.Put(kit.Written(r.Gun.ReflectedC, u.Temp))
}

func (p *place) showEmissivity() {
	if p.met.Emissivity == 0 {
		p.number.Put("")
		return
	}
	p.number.Put(p.met.String())
}

func (p *place) enable(surface, reach bool) {
	kit.SetEnabled(surface, p.surface.Select, p.number)
	kit.SetEnabled(reach, p.reach)
}

// setEmissivity takes what is typed for the point that it was typed at: what was refused there is mended there,
// though the caret has been at another since.
func (p *place) setEmissivity(text string) {
	at := p.point
	if p.slipAt != "" {
		at = p.slipAt
	}
	surface, err := readSurface(text)
	p.slipAt = ""
	if err != nil {
		p.slipAt = at
		p.number.Title(kit.L("window.hosemap.emissivity-at", say.PointName(at)))
	}
	p.number.Refuse(err)
	if err == nil && at != "" {
		p.setSurface(at, surface)
	}
}

// readSurface reads an emissivity, or the word of a surface that has one.
func readSurface(text string) (cases.Surface, error) {
	s, err := cases.ParseSurface(strings.ReplaceAll(strings.TrimSpace(text), ",", "."))
	if err != nil {
		return s, errors.New(kit.L("window.hosemap.emissivity-bounds"))
	}
	return s, nil
}

func (p *place) pickSurface(word string) {
	if p.slipAt == p.point {
		p.number.Forget() // the word stands for it
	}
	p.setSurface(p.point, cases.Surface{Word: word})
}

func (p *place) setSurface(at diagram.Point, s cases.Surface) {
	p.view.editRound(kit.L("window.hosemap.edit-surface", say.PointName(at)), func(r *cases.Round) { r.Begun(at).Surface = s })
}

func (p *place) cantReach() { p.view.OnReading(p.point, "-") } // as typed there

func (p *place) setGun(text string) {
	if text == "" {
		p.view.editRound(kit.L("window.hosemap.edit-gun"), func(r *cases.Round) { r.Gun.Emissivity = nil })
		return
	}
	surface, err := readSurface(text)
	p.gun.Refuse(err)
	if err == nil && surface.Emissivity != 0 {
		p.view.editRound(kit.L("window.hosemap.edit-gun"), func(r *cases.Round) { r.Gun.Emissivity = &surface.Emissivity })
	}
}

func (p *place) setReflected(text string) {
	var c *celsius
	err := kit.Set(&c, text, p.units.ParseTemp)
	p.reflected.Refuse(err)
	if err == nil {
		p.view.editRound(kit.L("window.hosemap.edit-gun"), func(r *cases.Round) { r.Gun.ReflectedC = c })
	}
}

// forget empties the fields of what was refused: another round is shown.
func (p *place) forget() {
	for _, f := range []*kit.Field{p.number, p.gun, p.reflected} {
		f.Forget()
	}
}

func (p *place) leave() {
	for _, f := range []*kit.Field{p.number, p.gun, p.reflected} {
		f.Leave()
	}
}
