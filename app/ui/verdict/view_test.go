package verdict

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/cases"
	"loopbook/diagram/units"
)

func TestEveryConfirmationHasWords(t *testing.T) {
	for _, word := range confirmations() {
		if name := confirmation(word); name == "" || (name == word && word != "cap" && word != "fan" && word != cases.ByWarmUp) {
			t.Errorf("%q is shown as %q", word, name)
		}
	}
}

// What the case holds can be pointed at; what it doesn't hold is told.
func TestTheVerdictPointsAtEvidence(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	var v *View
	show := func() {
		v.Show(Data{Case: c, Units: units.Metric(), Evidence: []Evidence{{cases.ByHoseMap, "Hose map: 2 rounds."}, {"bubbles", "Bubbles: seen."}}})
	}
	v = New(func(_ string, change func(*cases.Case)) { change(&c); show() })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1050, 700))
	c.Verdict.ConfirmedBy = "cap"
	show()
	if n := len(v.evidence.Objects); n != 3 {
		t.Fatalf("%d rows: two of evidence, and that the cap's is missing", n)
	}
	row := v.evidence.Objects[1].(*fyne.Container)
	for _, o := range row.Objects {
		if box, ok := o.(*fyne.Container); ok {
			test.Tap(box.Objects[0].(*widget.Button))
		}
	}
	if c.Verdict.ConfirmedBy != "bubbles" || len(v.evidence.Objects) != 2 {
		t.Errorf("confirmed by %q, %d rows", c.Verdict.ConfirmedBy, len(v.evidence.Objects))
	}
}
