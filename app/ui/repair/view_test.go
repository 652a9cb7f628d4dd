package repair

import (
	"errors"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/cases"
	"loopbook/diagram/units"
)

// screen is the screen on a case that it changes.
func screen(t *testing.T) (v *View, c *cases.Case) {
	t.Helper()
	test.NewTempApp(t)
	c = &cases.Case{}
	show := func() {
		d := Data{Case: *c, Units: units.Metric(), Bill: Bill{Parts: []string{"31.40 EUR"}}}
		for _, id := range []string{"drained", "filled"} {
			d.Steps = append(d.Steps, Step{ID: id, Text: id, Done: slices.Contains(c.Repair.StepsDone, id)})
		}
		v.Show(d)
	}
	v = New(func(_ string, change func(*cases.Case)) { change(c); show() }, func(code string) (string, error) {
		if code != "EUR" {
			return "", errors.New("no currency")
		}
		return code, nil
	})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1050, 700))
	show()
	return v, c
}

func TestPartsAreAddedAndReadAndKeepTheCaret(t *testing.T) {
	v, c := screen(t)
	v.addPart()
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
	if v.rows[0] != row || row.sum.Text != "31.40 EUR" {
		t.Errorf("the row was made anew under the caret, or has no sum: %q", row.sum.Text)
	}
	row.price.SetText("dear")
	row.price.Leave()
	if *c.Repair.Parts[0].Price != 31.4 {
		t.Errorf("a word was kept as a price: %v", *c.Repair.Parts[0].Price)
	}
}

func TestStepsAreTicked(t *testing.T) {
	v, c := screen(t)
	v.steps.boxes[0].SetChecked(true)
	v.steps.boxes[1].SetChecked(true)
	v.steps.boxes[1].SetChecked(false)
	if !slices.Equal(c.Repair.StepsDone, []string{"drained"}) || !v.steps.boxes[0].Checked {
		t.Errorf("done: %v", c.Repair.StepsDone)
	}
}
