// Package greeting is what an empty notebook shows: what the program is for,
// and the three ways to begin.
package greeting

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// Choice is one way to begin.
type Choice struct {
	Title, Text, Button, Key string
	Icon                     fyne.Resource
	Do                       func()
}

// View is the screen.
type View struct {
	Content fyne.CanvasObject
	foot    *widget.Label
}

// New makes the screen with its ways to begin; the first stands out.
func New(choices ...Choice) *View {
	cards := container.NewGridWithColumns(len(choices))
	for i, c := range choices {
		cards.Add(card(c, i == 0))
	}
	title := widget.NewLabel(kit.L("window.greeting.title"))
	title.SizeName, title.TextStyle.Bold, title.Alignment = theme.SizeNameHeadingText, true, fyne.TextAlignCenter
	under := widget.NewLabel(kit.L("window.greeting.under"))
	under.Alignment = fyne.TextAlignCenter
	v := &View{foot: widget.NewLabelWithStyle("", fyne.TextAlignCenter, fyne.TextStyle{})}
	v.Deleted("")
	v.Content = container.NewVBox(layout.NewSpacer(), container.NewCenter(vignette()), title, under, container.NewCenter(kit.Wide(960, container.NewPadded(cards))), v.foot, layout.NewSpacer())
	return v
}

// Deleted says which case was deleted just now, and how it comes back; "": none was, and nothing needs to be saved.
func (v *View) Deleted(title string) {
	v.foot.SizeName, v.foot.Importance = theme.SizeNameCaptionText, widget.LowImportance
	text := kit.L("window.greeting.kept")
	if title != "" {
		v.foot.SizeName, v.foot.Importance = theme.SizeNameText, widget.WarningImportance
		text = kit.L("window.greeting.deleted", title)
	}
	v.foot.SetText(text)
}

func card(c Choice, first bool) fyne.CanvasObject {
	ground := kit.NewGround(drawing.Card, drawing.Edge, 8)
	button := kit.NewButton(c.Button, c.Do)
	if first {
		ground.Ink(drawing.Card, drawing.Accent, 2.5)
		button.Importance = widget.HighImportance
	}
	key := kit.Small(c.Key)
	key.Alignment = fyne.TextAlignTrailing
	head := container.NewHBox(widget.NewIcon(c.Icon), kit.Heading(c.Title))
	text := widget.NewLabel(c.Text)
	text.Wrapping = fyne.TextWrapWord
	foot := container.New(kit.Shares{150, 80}, button, key) // level with the other cards', however many lines stand over it
	return kit.On(ground, container.NewPadded(container.NewBorder(container.NewVBox(head, text), foot, nil, nil)))
}

// vignette is the loop in little, without readings.
func vignette() fyne.CanvasObject {
	l := diagram.Loop{
		Width: 660, Height: 220,
		Parts: []diagram.Part{
			{ID: "engine", Kind: diagram.Engine, Box: diagram.Box{10, 4, 110, 212}},
			{ID: "thermostat", Kind: diagram.Thermostat, Box: diagram.Box{134, 8, 52, 52}},
			{ID: "pump", Kind: diagram.Pump, Box: diagram.Box{134, 160, 52, 52}},
			{ID: "radiator", Kind: diagram.Radiator, Box: diagram.Box{520, 4, 52, 212}},
		},
		Hoses: []diagram.Hose{
			{Bore: diagram.BoreMain, Cold: diagram.Forward, Hot: diagram.Forward, Path: []diagram.XY{{120, 34}, {140, 34}}},
			{Bore: diagram.BoreMain, Hot: diagram.Forward, Path: []diagram.XY{{184, 34}, {520, 34}}},
			{Bore: diagram.BoreMain, Hot: diagram.Forward, Path: []diagram.XY{{520, 186}, {184, 186}}},
			{Bore: diagram.BoreMain, Hot: diagram.Forward, Path: []diagram.XY{{140, 186}, {120, 186}}},
			{Bore: diagram.BoreHeater, Hot: diagram.Forward, Path: []diagram.XY{{160, 58}, {160, 162}}},
		},
		Captions: []diagram.Caption{
			{Part: "thermostat", At: diagram.XY{194, 58}},
			{Part: "pump", At: diagram.XY{194, 164}},
			{Part: "radiator", At: diagram.XY{580, 110}},
		},
	}
	return kit.Wide(560, kit.NewVignette(drawing.DrawBare(&l)))
}
