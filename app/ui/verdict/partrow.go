package verdict

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// partRow is a line of the parts list: name, how many, price of one.
type partRow struct {
	name, quantity, price *kit.Field
	content               fyne.CanvasObject
}

func newPartRow(edit func(string, func(*cases.Case)), at int) *partRow {
	r := &partRow{}
	r.name = kit.NewField("part", func(text string) {
		edit("part", func(c *cases.Case) { c.Repair.Parts[at].Name = text })
	})
	r.quantity = number("how many", edit, func(c *cases.Case) **float64 { return &c.Repair.Parts[at].Quantity })
	r.price = number("price of one", edit, func(c *cases.Case) **float64 { return &c.Repair.Parts[at].Price })
	remove := widget.NewButtonWithIcon("", theme.DeleteIcon(), func() {
		edit("part removed", func(c *cases.Case) { c.Repair.Parts = slices.Delete(c.Repair.Parts, at, at+1) })
	})
	remove.Importance = widget.LowImportance
	r.content = container.NewBorder(nil, nil, nil, remove, container.New(kit.Shares{240, 90, 110}, r.name, r.quantity, r.price))
	return r
}

func number(hint string, edit func(string, func(*cases.Case)), at func(*cases.Case) **float64) *kit.Field {
	var f *kit.Field
	f = kit.NewField(hint, func(text string) {
		var v *float64
		err := kit.Set(&v, text, units.Number)
		f.Refuse(err)
		if err == nil {
			edit("part", func(c *cases.Case) { *at(c) = v })
		}
	})
	return f
}

func (r *partRow) show(p cases.Part) {
	r.name.Put(p.Name)
	r.quantity.Put(kit.Written(p.Quantity, plain))
	r.price.Put(kit.Written(p.Price, plain))
}

func (r *partRow) leave() {
	for _, f := range []*kit.Field{r.name, r.quantity, r.price} {
		f.Leave()
	}
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
