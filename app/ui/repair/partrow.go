package repair

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// columns are the shares of a part's name, how many, the price of one, the sum.
func columns() kit.Shares { return kit.Shares{206, 78, 86, 84} }

// partRow is a line of the parts list.
type partRow struct {
	name, quantity, price *kit.Field
	sum                   *widget.Label
	content               fyne.CanvasObject
	remove                *kit.Button // stands beside the content
}

func newPartRow(v *View, at int, after func() fyne.Focusable) *partRow {
	edit := v.edit
	what := kit.L("window.repair.part")
	r := &partRow{sum: newSum()}
	r.name = kit.NewField(what, func(text string) {
		edit(what, func(c *cases.Case) { c.Repair.Parts[at].Name = text })
	})
	r.quantity = number(kit.L("window.repair.how-many"), "1", kit.Between(units.Number, 0, mostOfAPart, kit.Plain[float64]), edit, func(c *cases.Case) **float64 { return &c.Repair.Parts[at].Quantity })
	r.price = number(kit.L("window.repair.price-of-one"), "", v.readPrice, edit, func(c *cases.Case) **float64 { return &c.Repair.Parts[at].Price })
	r.price.After = after // not to the button that removes the part
	r.remove = kit.NewRemove(func() {
		edit(kit.L("window.repair.part-removed"), func(c *cases.Case) { c.Repair.Parts = slices.Delete(c.Repair.Parts, at, at+1) })
	})
	r.content = high(container.New(columns(), r.name, r.quantity, r.price, r.sum))
	return r
}

// heads stand over the part rows, in their columns.
func heads() fyne.CanvasObject {
	last := kit.Small(kit.L("window.repair.sum"))
	last.Alignment = fyne.TextAlignTrailing
	return container.New(columns(), kit.Small(kit.Capital(kit.L("window.repair.part"))), kit.Small(kit.L("window.repair.how-many")), kit.Small(kit.L("window.repair.price-of-one")), last)
}

// high makes a part's fields and its button, which stand in columns of their own, as
// high as each other.
func high(o fyne.CanvasObject) fyne.CanvasObject {
	field, button := kit.NewField("", nil), kit.NewRemove(func() {})
	return kit.Roomy(fyne.NewSize(0, max(field.MinSize().Height, button.MinSize().Height)), o)
}

// newSum holds a sum, where sums stand under each other.
func newSum() *widget.Label {
	return widget.NewLabelWithStyle("", fyne.TextAlignTrailing, fyne.TextStyle{})
}

// mostOfAPart bounds how many of it there are and what one costs, so that a slip
// doesn't make a sum that nobody can read.
const mostOfAPart = 1e7

func number(title, hint string, parse func(string) (float64, error), edit func(string, func(*cases.Case)), at func(*cases.Case) **float64) *kit.Field {
	var f *kit.Field
	f = kit.NewField(hint, func(text string) {
		var v *float64
		err := kit.Set(&v, text, parse)
		f.Refuse(err)
		if err == nil {
			edit(kit.L("window.repair.part"), func(c *cases.Case) { *at(c) = v })
		}
	})
	f.Title(title)
	return f
}

func (r *partRow) show(p cases.Part, price, sum string) {
	r.name.Put(p.Name)
	r.quantity.Put(kit.Written(p.Quantity, kit.Plain[float64]))
	r.price.Put(price)
	r.sum.SetText(sum)
}

func (r *partRow) leave() {
	for _, f := range []*kit.Field{r.name, r.quantity, r.price} {
		f.Leave()
	}
}
