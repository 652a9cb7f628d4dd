package verdict

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/cases"
	"loopbook/diagram/units"
)

func TestPartsAreAddedAndReadAndKeepTheCaret(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	var v *View
	edit := func(_ string, change func(*cases.Case)) {
		change(&c)
		v.Show(c, units.Metric())
	}
	v = New(edit)
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1050, 700))
	edit("", func(c *cases.Case) { c.Repair.Parts = append(c.Repair.Parts, cases.Part{Name: "part"}) })
	row := v.rows[0]
	for _, entry := range []struct {
		field interface {
			fyne.Focusable
			SetText(string)
			Leave()
		}
		text string
	}{{row.name, "Thermostat, 88 °C"}, {row.quantity, "1"}, {row.price, "31,40"}} {
		entry.field.SetText(entry.text)
		entry.field.Leave()
	}
	p := c.Repair.Parts[0]
	if p.Name != "Thermostat, 88 °C" || p.Quantity == nil || *p.Quantity != 1 || p.Price == nil || *p.Price != 31.4 {
		t.Errorf("part = %+v", p)
	}
	if v.rows[0] != row {
		t.Error("the row was made anew under the caret")
	}
	row.price.SetText("dear")
	row.price.Leave()
	if *c.Repair.Parts[0].Price != 31.4 {
		t.Errorf("a word was kept as a price: %v", *c.Repair.Parts[0].Price)
	}
}

func TestEveryConfirmationHasWords(t *testing.T) {
	for _, word := range confirmations() {
		if name := confirmation(word); name == "" || (name == word && word != "cap" && word != "fan") {
			t.Errorf("%q is shown as %q", word, name)
		}
	}
}
