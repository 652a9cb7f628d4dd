// Package repair is the screen for the work itself: parts, labour and what they
// cost, what stands in the way of the part, and the steps of filling and
// bleeding to tick off.
package repair

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// Data is what the screen shows. All words are ready to be read.
type Data struct {
	Case     cases.Case
	Units    units.Set
	Bill     Bill
	Notes    []Note
	Steps    []Step
	Cautions []string
}

// Bill is what the repair costs, in words.
type Bill struct {
	Parts                []string // a line's sum, as the case's parts; "": no price
	Labour               string
	Subtotal, Tax, Total string
	Remark               string // what no sum holds, or why there is none
}

// Note is a place where the part may sit.
type Note struct{ What, Hours, Way, Renew, Class string }

// Step is something to do and to tick off.
type Step struct {
	ID, Text string
	Done     bool
}

// Money is what the screen doesn't know of it.
type Money struct {
	Parse func(code string) (string, error)            // refuses what is no currency and gives its code
	Write func(currency string, price float64) string  // with as many places as the currency has
	Read  func(currency, text string) (float64, error) // refuses more places than it has
}

// View is the screen.
type View struct {
	// Usual is what the shop asks for otherwise: currency, tax, price of an hour.
	// It goes into a case that has none of them as its first part is noted.
	Usual func() cases.Repair

	edit  func(what string, change func(*cases.Case))
	money Money
	form  *kit.Form
	id    string // of the case that is shown
	code  string // of its currency
	parts *fyne.Container
	bins  *fyne.Container // the buttons that remove a part, each beside its own
	rows  []*partRow
	slips *kit.Refusals // of the parts
	bill  bill
	notes *fyne.Container
	steps *steps

	noted   string // what the notes were made of
	content fyne.CanvasObject
	left    *fyne.Container // the parts and what is in the way, one under the other
}

// bill are the labels of the sums.
type bill struct {
	labour, subtotal, tax, total *widget.Label
	remark                       *widget.Label
}

// New makes the screen; edit changes the case.
func New(edit func(what string, change func(*cases.Case)), m Money) *View {
	v := &View{
		Usual: func() cases.Repair { return cases.Repair{} },
		edit:  edit, money: m, form: kit.NewForm(edit), parts: container.NewVBox(), bins: container.NewVBox(), notes: container.NewVBox(), steps: newSteps(edit),
		bill: bill{newSum(), newSum(), newSum(), newSum(), kit.Small("")},
	}
	v.bill.total.TextStyle.Bold = true
	v.bill.remark.Wrapping, v.bill.remark.Truncation = fyne.TextWrapWord, fyne.TextTruncateOff
	v.left = container.NewVBox(v.partsAndPrice(), kit.Section(kit.L("window.repair.in-the-way"),
		v.form.Area(kit.L("window.repair.own-note"), kit.L("window.repair.own-note-hint"), 3, func(c *cases.Case) *string { return &c.Repair.AccessNote })))
	right := container.NewVBox(v.notes, kit.Section(kit.L("window.repair.steps"), v.steps.content))
	v.content = container.New(kit.Shares{470, 470},
		container.NewVScroll(container.NewPadded(v.left)), container.NewVScroll(container.NewPadded(right)))
	return v
}

func (v *View) partsAndPrice() fyne.CanvasObject {
	f := v.form
	over := heads()
	v.slips = kit.NewRefusals(container.NewVBox(over, v.parts))
	add := kit.NewQuiet(kit.L("window.repair.add-part"), theme.ContentAddIcon(), v.addPart)
	below := container.NewHBox(add)
	bins := container.NewVBox(kit.Roomy(fyne.NewSize(0, over.MinSize().Height), container.NewStack()), v.bins)
	// Tab goes from a price to the next part and then to the adding, and to no bin before.
	list := container.New(layout.NewBorderLayout(nil, below, nil, bins), v.slips.Content, below, bins)
	hours := kit.Number(f, kit.L("window.repair.hours"), units.Hours().Clock, 0, 1000, func(c *cases.Case) **float64 { return &c.Repair.LabourHours })
	perHour := f.Quantity(
		func(units.Set) string { return kit.L("window.repair.per-hour") },
		func(c *cases.Case, _ units.Set) string {
			return v.price(c.Repair.Currency, c.Repair.LabourPricePerHour)
		},
		func(c *cases.Case, text string, _ units.Set) error {
			return kit.Set(&c.Repair.LabourPricePerHour, text, v.readPrice)
		})
	tax := kit.Number(f, kit.L("window.repair.tax-percent"), units.Number, 0, 100, func(c *cases.Case) **float64 { return &c.Repair.TaxPercent })
	currency := f.Quantity(
		func(units.Set) string { return kit.L("window.repair.currency") },
		func(c *cases.Case, _ units.Set) string { return c.Repair.Currency },
		func(c *cases.Case, text string, _ units.Set) (err error) {
			c.Repair.Currency, err = v.money.Parse(text)
			return err
		})
	return kit.Section(kit.L("window.repair.parts"),
		list,
		kit.Explained(container.NewGridWithColumns(4, hours, perHour, tax, currency)),
		widget.NewSeparator(),
		container.New(kit.Tight{},
			line(kit.L("window.repair.labour"), v.bill.labour),
			line(kit.L("window.repair.subtotal"), v.bill.subtotal),
			line(kit.L("window.repair.tax"), v.bill.tax),
			line(kit.L("window.repair.total"), v.bill.total)),
		v.bill.remark)
}

// price is written as money is in its currency; "" where it isn't known.
func (v *View) price(currency string, p *float64) string {
	return kit.Written(p, func(p float64) string { return v.money.Write(currency, p) })
}

// readPrice reads what was typed as money in the case's currency.
func (v *View) readPrice(text string) (float64, error) {
	return kit.Between(func(text string) (float64, error) { return v.money.Read(v.code, text) }, 0, mostOfAPart, kit.Plain[float64])(text)
}

// line is a sum with its name, close to the next.
func line(name string, sum *widget.Label) fyne.CanvasObject {
	label := widget.NewLabel(name)
	label.TextStyle = sum.TextStyle
	return container.NewBorder(nil, nil, label, nil, sum)
}

func (v *View) addPart() {
	v.edit(kit.L("window.repair.part-added"), func(c *cases.Case) {
		r := &c.Repair
		if r.Currency == "" && r.TaxPercent == nil && r.LabourPricePerHour == nil {
			usual := v.Usual()
			r.Currency, r.TaxPercent, r.LabourPricePerHour = usual.Currency, usual.TaxPercent, usual.LabourPricePerHour
		}
		r.Parts = append(r.Parts, cases.Part{Name: kit.L("window.repair.part")})
	})
	if n := len(v.rows); n > 0 {
		kit.Focus(v.rows[n-1].name)
	}
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show paints a case. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	v.code = d.Case.Repair.Currency
	v.form.Show(d.Case, d.Units)
	v.showParts(d)
	b := d.Bill
	for label, text := range map[*widget.Label]string{
		v.bill.labour: b.Labour, v.bill.subtotal: b.Subtotal, v.bill.tax: b.Tax, v.bill.total: b.Total, v.bill.remark: b.Remark,
	} {
		label.SetText(text)
	}
	v.left.Refresh() // another case has more or fewer parts
	v.showNotes(d)
	v.steps.show(d.Steps)
}

// showParts keeps the rows while no part goes, so that the caret stays, and what
// was refused.
func (v *View) showParts(d Data) {
	r := d.Case.Repair
	if v.id != d.Case.ID || len(v.rows) > len(r.Parts) {
		v.id, v.rows = d.Case.ID, v.rows[:0]
		v.parts.RemoveAll()
		v.bins.RemoveAll()
	}
	for i := len(v.rows); i < len(r.Parts); i++ {
		row := newPartRow(v, i, func() fyne.Focusable { return v.afterPart(i) })
		v.rows = append(v.rows, row)
		v.parts.Add(row.content)
		v.bins.Add(high(row.remove))
		v.slips.Take(row.content)
	}
	for i, row := range v.rows {
		sum := ""
		if i < len(d.Bill.Parts) {
			sum = d.Bill.Parts[i]
		}
		row.show(r.Parts[i], v.price(r.Currency, r.Parts[i].Price), sum)
	}
}

// afterPart is where Enter goes from a part's price: to the next part, or to the
// labour.
func (v *View) afterPart(i int) fyne.Focusable {
	if i+1 < len(v.rows) {
		return v.rows[i+1].name
	}
	return v.form.First()
}

// showNotes makes the notes anew where they are others.
func (v *View) showNotes(d Data) {
	key := d.Case.ID + string(d.Case.Verdict.Cause)
	for _, n := range d.Notes {
		key += n.What
	}
	if key == v.noted {
		return
	}
	v.noted = key
	v.notes.RemoveAll()
	v.notes.Add(kit.Heading(kit.L("window.repair.access")))
	switch {
	case len(d.Notes) > 0:
	case d.Case.Verdict.Cause == cases.Healthy:
		v.notes.Add(kit.Paragraphs(kit.Span{Text: kit.L("window.repair.sound"), Small: true}))
	default:
		v.notes.Add(kit.Paragraphs(kit.Span{Text: kit.L("window.repair.no-notes"), Small: true}))
	}
	for _, n := range d.Notes {
		v.notes.Add(kit.Paragraphs(
			kit.Span{Text: n.What, Bold: true},
			kit.Span{Text: n.Way, Small: true},
			kit.Span{Text: kit.L("window.repair.renew", n.Renew), Small: true},
			kit.Span{Text: n.Hours + " · " + n.Class, Small: true, Color: theme.ColorNamePlaceHolder}))
	}
	var body []kit.Span
	for _, c := range d.Cautions {
		body = append(body, kit.Span{Text: c, Small: true})
	}
	v.notes.Add(kit.Card("look", kit.L("window.repair.beware"), body...))
}

// Leave keeps what is being typed.
func (v *View) Leave() {
	v.form.Leave()
	for _, row := range v.rows {
		row.leave()
	}
}
