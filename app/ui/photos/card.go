package photos

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// card is one picture with its caption and its point.
type card struct {
	picture *canvas.Image
	problem *widget.Label
	caption *kit.Field
	point   *kit.Choice[diagram.Point]
	content fyne.CanvasObject
}

func newCard(v *View, at int, points []diagram.Point) *card {
	c := &card{picture: &canvas.Image{FillMode: canvas.ImageFillContain, ScaleMode: canvas.ImageScaleSmooth}, problem: widget.NewLabel("")}
	c.problem.Wrapping, c.problem.Alignment = fyne.TextWrapWord, fyne.TextAlignCenter
	c.caption = kit.NewField(kit.L("window.photos.caption-hint"), func(text string) {
		v.edit(kit.L("window.photos.caption"), func(c *cases.Case) { c.Photos[at].Caption = text })
	})
	c.point = kit.NewChoice(points, v.PointName, func(p diagram.Point) {
		v.edit(kit.L("window.photos.point"), func(c *cases.Case) { c.Photos[at].Point = p })
	})
	open := kit.NewQuiet("", theme.ZoomInIcon(), func() { v.OnOpen(at) })
	remove := kit.NewRemove(func() {
		v.edit(kit.L("window.photos.removed"), func(c *cases.Case) { c.Photos = slices.Delete(c.Photos, at, at+1) })
	})
	under := container.NewVBox(
		kit.Labelled(kit.L("window.photos.caption"), c.caption),
		container.NewBorder(nil, nil, nil, container.NewVBox(layout.NewSpacer(), container.NewHBox(open, remove)), kit.Labelled(kit.L("window.photos.at"), c.point.Select)))
	room := container.NewStack(kit.NewGround(drawing.PartFill, "", 4), container.NewCenter(kit.Wide(cardWidth-60, c.problem)), container.NewPadded(c.picture))
	c.content = kit.On(kit.NewGround(drawing.Card, drawing.Rule, 6), container.NewBorder(nil, under, nil, nil, room))
	return c
}

func (c *card) show(p cases.Photo, shown Photo) {
	c.caption.Put(p.Caption)
	c.point.Put(p.Point)
	c.problem.SetText(shown.Problem)
	if shown.Image != nil && c.picture.Image != shown.Image {
		c.picture.Image = shown.Image
		c.picture.Refresh()
	}
}
