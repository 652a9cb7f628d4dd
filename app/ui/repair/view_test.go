package repair

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
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
	v = New(func(_ string, change func(*cases.Case)) { change(c); show() }, Money{
		Parse: func(code string) (string, error) {
			if code != "EUR" {
				return "", errors.New("no currency")
			}
			return code, nil
		},
		Write: func(_ string, price float64) string { return fmt.Sprintf("%.2f", price) },
		Read:  func(_, text string) (float64, error) { return units.Number(text) },
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
	if row.price.Text != "31.40" {
		t.Errorf("the price stands there as %q", row.price.Text)
	}
	if v.rows[0] != row || row.sum.Text != "31.40 EUR" {
		t.Errorf("the row was made anew under the caret, or has no sum: %q", row.sum.Text)
	}
	for _, slip := range []string{"-5", "1e300"} {
		row.price.SetText(slip)
		row.price.Leave()
		if *c.Repair.Parts[0].Price != 31.4 {
			t.Errorf("%s was kept as a price", slip)
		}
		if said := kittest.Texts(v.slips.Content); !strings.Contains(said, "Not kept. Price each: write 0 to 10\u00a0000\u00a0000") {
			t.Errorf("the reason isn't said in:\n%s", said)
		}
	}
	row.price.SetText("dear")
	row.price.Leave()
	if *c.Repair.Parts[0].Price != 31.4 {
		t.Errorf("a word was kept as a price: %v", *c.Repair.Parts[0].Price)
	}
}

// A hand in a glove that presses Enter once too often must not be left on the
// button that removes the part.
func TestEnterGoesFromAPriceToTheNextPartAndThenToTheLabour(t *testing.T) {
	v, c := screen(t)
	v.addPart()
	v.addPart()
	if got := v.rows[0].price.After(); got != fyne.Focusable(v.rows[1].name) {
		t.Errorf("from the first price Enter goes to %v", got)
	}
	test.Type(v.rows[1].price.After(), "1:30")
	v.form.Leave()
	if h := c.Repair.LabourHours; h == nil || *h != 1.5 {
		t.Errorf("typed behind the last price: hours of labour %v, want 1.5", h)
	}
}

// Nor must Tab: the button comes only after all that is typed and the adding.
func TestTabGoesFromAPriceToTheNextPartAndThenToTheAdding(t *testing.T) {
	v, c := screen(t)
	v.addPart()
	v.addPart()
	on := fyne.CurrentApp().Driver().CanvasForObject(v.rows[0].price)
	on.Focus(v.rows[0].price)
	if on.FocusNext(); on.Focused() != fyne.Focusable(v.rows[1].name) {
		t.Errorf("from the first price Tab goes to %T", on.Focused())
	}
	on.Focus(v.rows[1].price)
	on.FocusNext()
	if add, ok := on.Focused().(*kit.Button); !ok || add.Text != kit.L("window.repair.add-part") {
		t.Fatalf("from the last price Tab goes to %T", on.Focused())
	}
	for _, row := range v.rows {
		if on.FocusNext(); on.Focused() != fyne.Focusable(row.remove) {
			t.Errorf("a part's button isn't reached by Tab, but %T", on.Focused())
		}
	}
	at := func(o fyne.CanvasObject) float32 { return fyne.CurrentApp().Driver().AbsolutePositionForObject(o).Y }
	if v.rows[1].remove.Tapped(nil); len(c.Repair.Parts) != 1 || at(v.rows[0].remove) != at(v.rows[0].name) {
		t.Errorf("%d parts; the button at %g, its part at %g", len(c.Repair.Parts), at(v.rows[0].remove), at(v.rows[0].name))
	}
}

// Who has found the loop healthy isn't asked for the cause once more.
func TestASoundLoopNeedsNoPart(t *testing.T) {
	v, c := screen(t)
	c.ID = "invented"
	for cause, want := range map[cases.Cause]string{"": "window.repair.no-notes", cases.Healthy: "window.repair.sound"} {
		c.Verdict.Cause = cause
		v.Show(Data{Case: *c, Units: units.Metric()})
		if said := kittest.Texts(v.notes); !strings.Contains(said, kit.L(want)) {
			t.Errorf("cause %q: it says\n%s", cause, said)
		}
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

// A step's words follow the units: the same step is said anew.
func TestAStepIsSaidInTheUnitsThatAreChosen(t *testing.T) {
	v, _ := screen(t)
	v.steps.show([]Step{{ID: "cold", Text: "Engine under 50 °C."}})
	v.steps.show([]Step{{ID: "cold", Text: "Engine under 122 °F.", Done: true}})
	if got := kittest.Texts(v.steps.content); !strings.Contains(got, "122 °F") || strings.Contains(got, "°C") || !v.steps.boxes[0].Checked {
		t.Errorf("the step says %q", got)
	}
}

// Another case's parts push down what stands under them.
func TestMorePartsMakeRoom(t *testing.T) {
	v, c := screen(t)
	c.ID, c.Repair.Parts = "another", make([]cases.Part, 5)
	v.Show(Data{Case: *c, Units: units.Metric()})
	above, below := v.left.Objects[0], v.left.Objects[1]
	if end := above.Position().Y + above.MinSize().Height; below.Position().Y < end {
		t.Errorf("the parts end at %g, what is under them begins at %g", end, below.Position().Y)
	}
}

// Over the number of pieces it said "Quan…" in any window that a laptop has room for.
func TestHeadsOfThePartsAreWholeInTheLeastRoom(t *testing.T) {
	test.NewTempApp(t)
	row := heads().(*fyne.Container)
	row.Resize(row.MinSize())
	for _, o := range row.Objects {
		l := o.(*widget.Label)
		l.Truncation = fyne.TextTruncateOff
		if l.Refresh(); l.MinSize().Width > l.Size().Width {
			t.Errorf("%q wants %v of %v", l.Text, l.MinSize().Width, l.Size().Width)
		}
	}
}
