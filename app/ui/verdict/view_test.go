package verdict

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
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
			test.Tap(box.Objects[0].(*kit.Button))
		}
	}
	if c.Verdict.ConfirmedBy != "bubbles" || len(v.evidence.Objects) != 2 {
		t.Errorf("confirmed by %q, %d rows", c.Verdict.ConfirmedBy, len(v.evidence.Objects))
	}
	for _, o := range v.evidence.Objects[0].(*fyne.Container).Objects {
		if w, ok := o.(*words); ok {
			test.Tap(w)
		}
	}
	if c.Verdict.ConfirmedBy != cases.ByHoseMap {
		t.Errorf("its words were pressed, and it is confirmed by %q", c.Verdict.ConfirmedBy)
	}
}

// Who points at evidence by the keyboard goes on from there.
func TestTheFocusStaysAtTheEvidence(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	var v *View
	show := func() {
		v.Show(Data{Case: c, Units: units.Metric(), Evidence: []Evidence{{cases.ByHoseMap, "Hose map: 2 rounds."}, {"bubbles", "Bubbles: seen."}}})
	}
	v = New(func(_ string, change func(*cases.Case)) { change(&c); show() })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1050, 700))
	show()
	w.Canvas().Focus(v.picks["bubbles"])
	v.picks["bubbles"].TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if c.Verdict.ConfirmedBy != "bubbles" || w.Canvas().Focused() != fyne.Focusable(v.picks["bubbles"]) {
		t.Errorf("confirmed by %q, the focus is on %v", c.Verdict.ConfirmedBy, w.Canvas().Focused())
	}
}

// The causes stand likeliest first with their chances, health among them, and all
// of them can be chosen; so can one from a list that was opened before.
func TestTheCausesStandByChance(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	v := New(func(_ string, change func(*cases.Case)) { change(&c) })
	d := Data{Units: units.Metric(), Ranked: []Ranked{{"pump-weak", "62 %"}, {cases.Healthy, "30 %"}, {"cap-weak", "< 1 %"}}}
	v.Show(d)
	opened := v.cause.Options
	if len(opened) != len(cases.Words[cases.Cause]())+1 || opened[1] != cases.Cause("pump-weak").Name()+", 62 %" || opened[2] != cases.Healthy.Name()+", 30 %" {
		t.Fatalf("the list is %q", opened)
	}
	d.Ranked[0].Chance = "71 %"
	v.Show(d)
	v.cause.OnChanged(opened[1]) // as its line does
	if c.Verdict.Cause != "pump-weak" {
		t.Errorf("chosen from a list that hung open: %q", c.Verdict.Cause)
	}
	d.Case.Verdict.Cause = "pump-weak"
	v.Show(d)
	if v.cause.Selected != cases.Cause("pump-weak").Name()+", 71 %" {
		t.Errorf("shown as %q", v.cause.Selected)
	}
}

// A second fault is told where the verdict is given, while there may be one.
func TestASecondFaultIsToldWithTheVerdict(t *testing.T) {
	test.NewTempApp(t)
	v := New(func(string, func(*cases.Case)) {})
	for _, tell := range []string{"The pressure falls.", ""} {
		v.Show(Data{Units: units.Metric(), Beside: tell})
		if said := kittest.Texts(v.content); strings.Contains(said, "The pressure falls.") != (tell != "") || strings.Contains(said, "A second fault?") != (tell != "") {
			t.Errorf("%q: the screen says\n%s", tell, said)
		}
	}
}

// A cause whose odds take a second line pushes what stands below down, and not into the note's field.
func TestNothingOverlapsWhenTheOddsWrap(t *testing.T) {
	test.NewTempApp(t)
	v := New(func(string, func(*cases.Case)) {})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 700))
	var c cases.Case
	v.Show(Data{Case: c, Units: units.Metric()})
	c.Verdict.Cause = "coolant-mix-wrong"
	v.Show(Data{Case: c, Units: units.Metric(), Odds: strings.Repeat("By what the case holds it is hardly likely. ", 3)})
	upper := v.left.Objects[0]
	if has, needs := upper.Size().Height, upper.MinSize().Height; has != needs || v.odds.Size().Height < v.odds.MinSize().Height {
		t.Errorf("the verdict has %g of height and needs %g, its odds have %v and need %v", has, needs, v.odds.Size(), v.odds.MinSize())
	}
}

// A cause that the loop has no part for isn't offered; one that was given stays in sight.
func TestACauseWithoutItsPartIsNotOffered(t *testing.T) {
	test.NewTempApp(t)
	const fan = cases.Cause("fan-not-running")
	v := New(func(string, func(*cases.Case)) {})
	d := Data{Units: units.Metric(), Ranked: []Ranked{{fan, "under 1 %"}}}
	d.Case.Loop.Fan = cases.NoFan
	v.Show(d)
	if told := strings.Join(v.cause.Options, "; "); strings.Contains(told, fan.Name()) {
		t.Errorf("without a fan the list is %q", told)
	}
	d.Case.Verdict.Cause = fan
	v.Show(d)
	if !strings.Contains(v.cause.Selected, fan.Name()) {
		t.Errorf("the verdict that was given is shown as %q", v.cause.Selected)
	}
}

// What the case holds is pointed at in its row and nowhere else; what it doesn't hold is in the list.
func TestEachConfirmationCanBeChosenInOnePlace(t *testing.T) {
	test.NewTempApp(t)
	v := New(func(string, func(*cases.Case)) {})
	d := Data{Units: units.Metric(), Evidence: []Evidence{{"bubbles", "Bubbles: seen."}}}
	d.Case.Verdict.ConfirmedBy = "bubbles"
	v.Show(d)
	if slices.Contains(v.unnoted.Options, confirmation("bubbles")) || len(v.unnoted.Options) != len(confirmations()) || v.unnoted.Selected != "" {
		t.Errorf("the list shows %q of %q", v.unnoted.Selected, v.unnoted.Options)
	}
	d.Case.Verdict.ConfirmedBy = "cap"
	v.Show(d)
	if v.unnoted.Selected != confirmation("cap") {
		t.Errorf("what the case doesn't hold is shown as %q", v.unnoted.Selected)
	}
}
