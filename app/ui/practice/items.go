package practice

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram/drawing"
)

// items are what can be bought. Each has its place and keeps it: what is bought says
// so where its button was, and no other button moves under a hand.
type items struct {
	view    *View
	names   []string // of what is laid out
	cells   []*cell
	content *fyne.Container
}

func newItems(v *View) *items { return &items{view: v, content: container.NewVBox()} }

// forget lets the next case be laid out anew.
func (t *items) forget() { t.names = nil }

func (t *items) show(groups []Group) {
	var names []string
	for _, g := range groups {
		names = append(names, g.Title)
		for _, i := range g.Items {
			names = append(names, i.Name)
		}
	}
	if t.names == nil || !slices.Equal(names, t.names) {
		t.names = names
		t.layOut(groups)
	}
	n := 0
	for _, g := range groups {
		for _, i := range g.Items {
			t.cells[n].show(i)
			n++
		}
	}
}

// enable lets all be bought, or none.
func (t *items) enable(on bool) {
	for _, c := range t.cells {
		kit.SetEnabled(on, c.button)
	}
}

func (t *items) layOut(groups []Group) {
	t.cells = nil
	t.content.Objects = nil
	for _, g := range groups {
		size, grid := fyne.Size{}, container.NewWithoutLayout()
		for _, i := range g.Items {
			c := newCell(i, func() { tell(t.view.OnBuy, i.Number) })
			t.cells = append(t.cells, c)
			grid.Add(c.content)
			size = size.Max(c.button.MinSize())
		}
		grid.Layout = layout.NewGridWrapLayout(size)
		t.content.Add(kit.Caption(g.Title))
		t.content.Add(grid)
	}
	t.content.Refresh()
}

// cell is the place of one item.
type cell struct {
	button  *kit.Button
	says    *widget.Label
	bought  *fyne.Container
	content fyne.CanvasObject
}

func newCell(i Item, buy func()) *cell {
	c := &cell{button: kit.NewButton(kit.L("window.practice.item", i.Name, i.Cost), buy), says: widget.NewLabel("")}
	c.says.TextStyle.Bold, c.says.SizeName = true, theme.SizeNameCaptionText
	c.bought = container.NewStack(kit.NewGround(drawing.FineGround, "", 5), container.NewBorder(nil, nil, nil, c.says, kit.Small(i.Name)))
	c.content = container.NewStack(c.button, c.bought)
	return c
}

// show puts what it says in the button's place. The focus goes on to what is next.
func (c *cell) show(i Item) {
	c.says.SetText(i.Short)
	if i.Bought && c.button.Visible() {
		if canvas := fyne.CurrentApp().Driver().CanvasForObject(c.button); canvas != nil && canvas.Focused() == fyne.Focusable(c.button) {
			canvas.FocusNext()
		}
	}
	c.button.Hidden, c.bought.Hidden = i.Bought, !i.Bought
	c.content.Refresh()
}
